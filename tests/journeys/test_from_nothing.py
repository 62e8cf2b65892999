"""From an empty shelf to answers: an outfit begun, a leaflet pasted, a body measured, yarn and cloth put in."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect

from lastlook import outfit
from tests.journeys.barriers import barriers
from tests.journeys.conftest import Served

MEASURES = {
    "bust_girth": "96 cm",
    "waist_girth": "74 cm",
    "hip_girth": "101 cm",
    "waist_to_hip": "20 cm",
    "waist_to_hem": "66 cm",
}


def test_an_outfit_is_begun_and_filled(serve: Callable[..., Served], page: Page) -> None:
    served = serve(outfit.demo())
    leaflet = served.document().text("leaflets/harbour-lights.txt") or ""
    page.goto(f"{served.address}/shelf")
    assert barriers(page) == []
    page.fill("#begin-name", "Ferry line, autumn")
    page.get_by_role("button", name="Begin").click()
    expect(page.locator("h1")).to_have_text("Add to the outfit")
    assert barriers(page) == []
    begun = page.url.removesuffix("/add")

    page.fill("#leaflet-name", "Raglan pullover")
    page.fill("#leaflet-text", leaflet)
    page.click("#add-leaflet-button")
    expect(page.locator(".sizes button")).to_have_count(4)
    page.get_by_role("button", name="38", exact=True).click()
    expect(page.locator(".sizes")).to_contain_text("Size 38")

    page.goto(f"{begun}/add")
    for field, value in (("name", "Navy"), ("grams", "520 g"), ("ball", "50 g = 140 m")):
        page.fill(f"#yarn-{field}", value)
    page.click("#add-yarn-button")
    expect(page.locator("h1")).to_have_text("The cupboard")
    page.goto(f"{begun}/add")
    for field, value in (("name", "Grey serge"), ("width", "140 cm"), ("length", "180 cm"), ("washed", "yes")):
        page.fill(f"#cloth-{field}", value)
    page.click("#add-cloth-button")
    expect(page.get_by_role("heading", name="Grey serge")).to_be_visible()

    page.goto(f"{begun}/add")
    page.select_option("#sewing-cloth", "grey-serge")
    page.click("#add-sewing-button")
    expect(page.locator("h1")).to_have_text("The skirt, on paper")

    page.goto(f"{begun}/wearer")
    page.fill("#wearer-name", "Maren")
    page.press("#wearer-name", "Enter")
    expect(page.locator(".whose")).to_contain_text("for Maren")
    for name, value in MEASURES.items():
        if not page.locator(f"#m-{name}").is_visible():
            page.locator(".others summary").click()
        page.fill(f"#m-{name}", value)
        page.press(f"#m-{name}", "Enter")
        expect(page.locator("#undo")).to_have_attribute("title", f"The {name.replace('_', ' ')} is now {value}.")

    page.goto(f"{begun}/table/skirt")
    page.click("#search")
    expect(page.locator("h1")).to_contain_text("Left over:", timeout=60_000)
    page.goto(begun)
    expect(page.locator("#adds .answer")).to_have_text("no")
    assert page.locator("li", has_text="Grey serge").first.inner_text().startswith("Grey serge")
    assert barriers(page) == []
