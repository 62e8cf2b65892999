"""What is said beside the main road: a flaw in the cloth, a leaflet made longer, how the skirt opens."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect

from lastlook import outfit
from lastlook.finding import Edit
from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served
from tests.journeys.harbour import harbour


def test_a_flaw_is_marked(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url("/cupboard"))
    page.get_by_text("Mark a flaw").click()
    for key, typed in (("what", "burn"), ("across", "5 in"), ("along", "60 in"), ("width", "1 in"), ("length", "1 in")):
        page.fill(f"#flaw-green-flannel-{key}", typed)
    page.get_by_role("button", name="Mark it").click()
    expect(page.locator("main")).to_contain_text("A burn, 1 in by 1 in, lies 5 in from the left selvedge")
    assert [flaw.what for flaw in outfit.read(served.document()).cloths[0].flaws] == ["moth hole", "burn"]


def test_a_leaflet_is_made_longer_and_as_printed_again(serve: Callable[..., Served], page: Page) -> None:
    correction = Edit("knitting.pullover.size", "36")
    served = serve(harbour(correction))
    rows = len(served.room.desk(served.number).knitted("pullover").pieces[0].rows)
    page.goto(served.url("/leaflet/pullover"))
    page.locator("#altering summary").click()
    page.get_by_label("Body longer by").fill("2 in")
    assert barriers(page) == []
    page.locator("#alter button").click()
    expect(page.locator(".latest")).to_contain_text("The pullover was altered.")
    assert len(served.room.desk(served.number).knitted("pullover").pieces[0].rows) == rows + 16
    expect(page.get_by_label("Body longer by")).to_have_value("2 in")
    page.get_by_label("Body longer by").fill("")
    with page.expect_response(lambda answer: answer.url.endswith("/leaflet/pullover")):
        page.locator("#alter button").click()
    expect(page.get_by_label("Body longer by")).to_have_value("")
    assert len(served.room.desk(served.number).knitted("pullover").pieces[0].rows) == rows


def test_how_a_skirt_opens_is_said(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url("/paper/skirt"))
    page.locator("#known summary").click()
    page.get_by_label("It opens with").select_option("hand-picked")
    page.get_by_label("the opening is long").fill("8 in")
    page.get_by_label("A test strip of this cloth eased").fill("3 %")
    page.locator("#known-facts button").click()
    expect(page.locator(".latest")).to_contain_text("More was said of the skirt.")
    plan = outfit.read(served.document()).sewings[0]
    assert plan.opening is not None
    assert (plan.opening.kind, round(plan.opening.length_mm), plan.eases) == ("hand-picked", 203, 0.03)


def test_the_tape_and_the_english_change_and_a_garment_is_taken_out(serve: Callable[..., Served], page: Page) -> None:
    served = serve(harbour())
    page.goto(served.url())
    page.locator("#manner summary").click()
    page.get_by_label("The tape shows").select_option("cm")
    page.get_by_label("Words of").select_option("UK")
    page.locator("#manner-facts button").click()
    expect(page.locator("nav[aria-label='Places']")).to_contain_text("Toile")
    expect(page.locator("main")).to_contain_text("cm more than you")
    page.goto(served.url("/add"))
    page.get_by_role("button", name="of the outfit: skirt").click()
    expect(page.locator("nav[aria-label='Places']")).not_to_contain_text("Toile")
    assert outfit.read(served.document()).sewings == ()
    page.click("#undo")
    expect(page.locator("nav[aria-label='Places']")).to_contain_text("Toile")
