"""Write `corpus_open.toml` anew: `python -m tests.list_open`, after the reader has learned something."""

from __future__ import annotations

from tests import corpus

HEAD = (
    "# Leaflets of examples/leaflets that are not read rightly yet: which kinds of trouble, and the first of each.",
    "# The list can only shrink: a leaflet read rightly comes off it, and a new kind of trouble is a fault.",
)


def main() -> None:
    """Judge every leaflet and list what is wrong with it."""
    out = [*HEAD, ""]
    for leaflet in corpus.leaflets():
        troubles = corpus.judge(leaflet)
        if not troubles:
            continue
        found = sorted(corpus.kinds(troubles))
        first = [next(one for one in troubles if one.startswith(f"{kind}:")) for kind in found]
        out += [f"[{leaflet.name}]", f"lacks = [{', '.join(map(_quoted, found))}]", "wrong = ["]
        out += [*(f"  {_quoted(one[:170])}," for one in first), "]", ""]
    corpus.OPEN.write_text("\n".join(out).rstrip() + "\n", encoding="utf-8")


def _quoted(words: str) -> str:
    plain = words.replace("\\", "\\\\").replace('"', '\\"').replace("\n", " ")
    return f'"{plain}"'


if __name__ == "__main__":
    main()
