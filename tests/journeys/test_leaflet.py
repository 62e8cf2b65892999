"""The leaflet: its text untouched, a correction accepted and lifted off, another size; then the rows on the needles."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect

from lastlook import outfit
from lastlook.finding import Edit
from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served
from tests.journeys.harbour import harbour

LEAFLET = "/leaflet/pullover"
NEEDLES = "/needles/pullover"


def _printed(page: Page) -> str:
    """Return the text as it stands on its paper, without the letters of the notes."""
    return str(
        page.evaluate(
            """() => [...document.querySelectorAll('.words p')].map((p) => {
                const copy = p.cloneNode(true);
                copy.querySelectorAll('.sign').forEach((sign) => sign.remove());
                return copy.textContent;
            }).join('')"""
        )
    )


def test_a_correction_is_accepted_and_the_text_stays(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    text = served.document().text("leaflets/harbour-lights.txt")
    page.goto(served.url(LEAFLET))
    assert _printed(page) == text
    expect(page.locator(".sizes")).to_contain_text("Size 34 does not add up.")
    note = page.locator(".pencilled", has_text="Row 24 of Back leaves 110 stitches; the leaflet says 112")
    sign = note.locator("> .sign").inner_text()
    assert page.locator(f"#words-{sign}").inner_text() == sign
    note.locator(".cures button").first.click()
    expect(page.locator(".sizes")).to_contain_text("Size 34 adds up.")
    assert _printed(page) == text
    assert served.document().text("leaflets/harbour-lights.txt") == text
    assert barriers(page) == []
    page.locator(".decided button").first.click()
    expect(page.locator(".sizes")).to_contain_text("Size 34 does not add up.")
    assert outfit.read(served.document()).knittings[0].corrections == ()


def test_another_reading_is_chosen_and_left_open_again(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url(LEAFLET))
    note = page.locator(".pencilled", has_text="is read as")
    note.first.locator("summary").click()
    note.first.locator("button[id$='-2']").click()
    expect(page.locator(".decided")).to_contain_text("the second way")
    assert [way for _, way in outfit.read(served.document()).knittings[0].readings] == [2]
    assert barriers(page) == []
    page.locator(".decided").get_by_role("button", name="Left open again").click()
    expect(page.locator(".decided")).to_have_count(0)
    assert outfit.read(served.document()).knittings[0].readings == ()


def test_another_size_is_chosen(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url(LEAFLET))
    page.get_by_role("button", name="36", exact=True).click()
    expect(page.get_by_role("button", name="36", exact=True)).to_have_attribute("aria-pressed", "true")
    expect(page.locator("#pieces-heading")).to_have_text("The pieces of size 36")
    assert served.room.desk(served.number).outfit.knittings[0].size == "36"


def test_rows_are_marked_and_kept(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url(NEEDLES))
    page.click("#done")
    expect(page.locator(".row-words span")).to_contain_text("Row 2 of")
    page.keyboard.press("Enter")
    expect(page.locator(".row-words span")).to_contain_text("Row 3 of")
    page.reload()
    expect(page.locator(".row-words span")).to_contain_text("Row 3 of")
    expect(page.locator(".lately li")).to_have_count(2)
    page.click("#back")
    expect(page.locator(".row-words span")).to_contain_text("Row 2 of")
    page.get_by_role("link", name="Sleeve", exact=True).click()
    expect(page.locator(".row-words span")).to_contain_text("Row 1 of")
    page.click("#done")
    expect(page.locator("h1")).to_have_text("Sleeve")
    expect(page.locator(".row-words span")).to_contain_text("Row 2 of")


def test_the_needle_is_mirrored_for_left_hands(serve: Callable[..., Served], page: Page) -> None:
    def arrow(document: outfit.Document) -> list[float]:
        served = serve(document)
        page.goto(served.url(NEEDLES))
        return [
            float(x)
            for x in page.evaluate("[...document.querySelectorAll('.needle text')].map((t) => t.getAttribute('x'))")
        ]

    right = arrow(harbour())
    left = arrow(harbour(Edit("outfit.hand", "left")))
    assert sorted(round(240 - x) for x in right) == sorted(round(x) for x in left)


def test_a_piece_comes_off_the_needles(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url(f"{NEEDLES}?piece=Back"))
    page.locator(".off summary").click()
    page.fill("#made-rows", "166")
    page.fill("#made-grams", "96 g")
    page.locator(".off button").click()
    expect(page.locator(".reach")).to_contain_text("166 rows, 96 g")
    made = served.room.desk(served.number).outfit.made
    assert (made[0].piece, made[0].rows, made[0].grams) == ("Back", 166, 96.0)
    page.locator(".off summary").click()
    page.fill("#made-rows", "168")
    page.locator(".off button").click()
    expect(page.locator(".reach")).to_contain_text("168 rows, 96 g")
    assert len(served.room.desk(served.number).outfit.made) == 1


UNCLEAR = """CUFF
Gauge: 6 sts = 1 inch, 8 rows = 1 inch.
Cast on 60 sts and k 8 rows.
Work in stockinette st, dec 1 st at each end of next and every 4th row 6 times.
K 8 rows. Bind off.
"""
CUFF = Edit("knitting.cuff.leaflet", "leaflets/cuff.txt")


def test_a_question_shows_what_each_way_gives_and_keeps_the_one_chosen(
    serve: Callable[..., Served], page: Page
) -> None:
    served = serve(outfit.change(harbour().with_file("leaflets/cuff.txt", UNCLEAR.encode()), [CUFF]))
    page.goto(served.url("/leaflet/cuff"))
    expect(page.locator(".sizes")).to_contain_text("It needs an answer from you.")
    ways = page.locator(".weighed > li")
    expect(ways).to_have_count(2)
    expect(ways.first).to_contain_text("46 stitches at the end")
    expect(ways.last).to_contain_text("48 stitches at the end")
    assert ways.first.inner_text().count(" long, ") == 1
    assert barriers(page) == []
    ways.last.get_by_role("button").click()
    expect(page.locator(".sizes")).to_contain_text("It adds up.")
    assert [way for _, way in outfit.read(served.document()).knittings[-1].readings] == [2]
