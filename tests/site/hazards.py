"""Finds a sentence that answers a hazard in words of its own, where one order should: what happens, and what to do, in one breath."""
import re

ACT = r"idle\b|neutral\b|engine (stop|off)|chocks?\b|clear (people|everyone)|people (clear|away)|foot (down|on)|prove\b|out of pump"
# order: what happens, what a page would then tell to do. "Never" and "do not" of a hazard count as telling.
HAZARDS = {
    "moved": (r"\b(it|rig|truck|any|if it|has) (\w+ )?(moves?|moved|creeps?|crept|rolls|strains|leans?)\b|\bmovement\b|^(moves|strains)\b|\bcreep or lean\b", rf"{ACT}|prove the shift|second try"),
    "steam": (r"\bsteam(s|ing)?\b|\bboil(s|ing)\b", rf"{ACT}|open nothing|stand clear|cool(s|ed)? (by itself|down)|pour|then look|technician"),
    "dead_throttle": (r"throttle (is |was )?dead|dead throttle|no answer from the throttle|throttle did nothing", rf"{ACT}|prove the shift|second try|try it again|try (it )?(once )?again"),
    "grinding": (r"\bgrind(s|ing)\b|\bit ground\b|\bteeth grind\b", r"straight back|back to (where|road|pump|the cent)|cent(er|re)\b|neutral\b|wait for (silence|zero)|once more|repeat|out of service|go on\b|push on"),
    "pump_fails": (r"\b(no clunk|does not go in(to pump)?|refused again|light does not come|fails? (again|twice)|twice without)\b", r"repeat|once more|out of service|technician|third"),
    "road_fails": (r"\b(road\b.*(fails?|refus\w+|stays? on|still on|does not take|no take-up)|no take-up|pump light (that )?(stays )?on)\b", r"technician|repeat|once more|do not drive|select pump|has no pump|out of service"),
    "fed_shaft": (r"never (reaches|comes to|gets to) zero|never rests|needle (that )?still moves", r"technician|shop\b|wait longer|do not (push|move)"),
    "override": (r"\boverride\b", r"engine (off|running)|key in your|brake set|last resort"),
    "trapped": (r"\b(cap|plug|coupling)\b", r"loosen|let (the |out )?pressure( out)?\b|bleeder (open )?until"),
    "lower_line": (r"\b(lower|cut|shut|bring)\b.*\b(line|pressure)\b", r"on silence|before you|have answered, then|until (it|they|the crew) (has|have) answered"),
    "again": (r"\b(third|second) (try|time|shift)\b", r"never|no\b|do not"),
}


def answered(text):
    """The hazards that a text answers in words of its own, by the order that should."""
    return [name for name, (happens, told) in HAZARDS.items()
            if re.search(happens, text, re.IGNORECASE | re.MULTILINE) and re.search(told, text, re.IGNORECASE)]
