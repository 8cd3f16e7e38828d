"""The water and foam pages: what each is asked, what it opens on, and everything its script needs."""
from calc.supply import page as water_page
from site_src.content import catalogue, data, units

FORMULAS = {page["id"]: page["formulas"] for page in data.load("water")["page"]}  # that a page's figures may rest on
TABLES = {page["id"]: page["tables"] for page in data.load("water")["page"]}  # baked, that go with a page
ALL_TABLES = ("draft", "supply")
PAGES = tuple(FORMULAS)
WATER = tuple(page for page in PAGES if page != "foam")  # foam has a place of its own
PRESSURE_WORDS = ("less", "more", "other_size", "put_back", "origin_handbook", "origin_declared", "origin_measured", "origin_pooled", "origin_typed", "modern_range", "department_measured", "modern_measured", "for_rig", "for_no_rig")


def fields(page):
    """What a page is asked, in its order."""
    return [field for field in data.load("water")["field"] if field["page"] == page]


def opening(page, family):
    """What a page opens on in a family of sizes, by name."""
    return {field["name"]: field[family] for field in fields(page)}


def shelf(page, pool=None):
    """What calc is handed beside the entries. pool: what the department's rigs measured, see content.fleet_hose."""
    if page == "draft":
        offered = [field for field in fields(page) if field["name"] == "water"][0]
        return {
            "suction": data.load("water")["suction"],
            "water_f": [choice for family in ("customary", "metric") for choice, _ in offered[f"{family}_options"]],
        }
    return catalogue.shelf(pool) if any(field["kind"] == "hose" for field in fields(page)) else {}


def bare_shelf():
    """What calc needs to know of hose to judge a rig, on a page without a layout."""
    whole = catalogue.shelf()
    return {"hoses": {name: {"coefficient": figures["coefficient"]} for name, figures in whole["hoses"].items()}, "crews": whole["crews"], "appliances": {}}


def _uses(row):
    """What a hose is laid for: the largest attack hose also supplies, and the smallest supply hose also attacks; attack and booster hose are carried by hand."""
    both = {"attack-2.5", "metric-65", "supply-3-on-2.5", "metric-77-on-65"}
    by_hand = {"hand"} if row["use"] in ("attack", "booster") else set()
    return by_hand | ({"attack", "supply"} if row["id"] in both else {row["use"]})


def opening_answer(page, pool):
    """The answer that is baked: the opening entries of the system that the page opens in. pool: as for shelf."""
    system = data.opening_system()
    return water_page.answer(page, opening(page, units.family(system)), shelf(page, pool), units.shown_in(system), [])["answer"]


def size(label):
    """A size as the data has it, with inches by their name in the language of the page that is being made."""
    return f"{label.removesuffix(' in')} {data.words('units')['unit']['US']['diameter']}" if label.endswith(" in") else label


def choices(field, family):
    """The options of a field in a family of sizes, as {id, label}; none where it is an amount."""
    return _field(field).get(f"{family}_options", [])


def _field(field):
    """A field as the script takes it: options as {id, label} by family."""
    told = {key: field[key] for key in ("name", "kind", "customary", "metric", "from_rig", "group", "taps", "when", "rule", "aside", "usual") if key in field}
    if field["kind"] == "choice":
        words = data.words("water")["option"]
        for family in ("customary", "metric"):
            plain = [[option, words.get(f"{field['page']}_{field['name']}", words.get(field["name"]))[option]] for option in field.get("options", [])]
            told[f"{family}_options"] = [
                {"id": option, "label": size(label), "common": True, **({"abroad": field["abroad"][option]} if "abroad" in field else {})} for option, label in field.get(f"{family}_options", plain)]
    if field["kind"] == "hose":
        uses = {row["id"]: _uses(row) for row in data.named("hoses")}
        for family in ("customary", "metric"):
            told[f"{family}_options"] = [
                hose for hose in catalogue.hose_choices() if hose["family"] == family and field["use"] in uses[hose["id"]]]
    return told


def page_data(page, pool):
    """Everything the script of one page needs, as plain data. pool: as for shelf."""
    words, water = data.shared_words(), data.words("water")
    formulas = data.by_id(data.named("formulas"))
    told = {
        **{key: words[key] for key in ("unit", "basis", "engine", "link")},
        **{key: water[key] for key in ("reckon", "page", "field", "group", "row", "working", "text", "told", "picture")},
        "refusal": {**words["refusal"], **water["refusal"]},
        "pressure": {key: words["pressure"][key] for key in PRESSURE_WORDS},
        "caution": {key: words["caution"][key] for key in ("stop", "caution")},
        "note": water["caution"],
        "rule": catalogue.rule_names(),
    }
    return {
        "page": page,
        **asked(page, pool),
        **({} if shelf(page).get("hoses") else {"at_hand": bare_shelf()}),
        "warns": data.load("water")["warns"],
        "formulas": {name: formulas[name] for name in FORMULAS[page]},
        "systems": units.for_page(),
        "words": told,
    }


def index_data(pool):
    """Everything the script of the Water page needs: what each page is asked, and the sentence of its answer. pool: as for shelf."""
    words, water = data.shared_words(), data.words("water")
    return {
        "pages": {page: asked(page, pool) for page in PAGES},
        "systems": units.for_page(),
        "words": {"unit": words["unit"], "told": water["told"], "text": water["text"], "reckon": water["reckon"], "pressure": {key: words["pressure"][key] for key in ("for_rig", "for_no_rig")}},
    }


def asked(page, pool):
    """What a page is asked, and what calc is handed beside the entries. pool: as for shelf."""
    return {"fields": [_field(field) for field in fields(page)], "shelf": shelf(page, pool)}
