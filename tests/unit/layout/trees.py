"""Layouts for tests: a line, a nozzle, and random trees of them."""
from hypothesis import strategies as st


def line(end, coefficient=15.5, length_ft=200, **more):
    return {"coefficient": coefficient, "length_ft": length_ft, "end": end, **more}


def fog(gpm=150, psi=100):
    return {"kind": "fog", "rated_gpm": gpm, "rated_psi": psi}


ENDS = st.one_of(
    st.builds(fog, st.integers(20, 500), st.integers(30, 120)),
    st.builds(lambda tip, psi: {"kind": "smooth", "tip_in": tip, "nozzle_psi": psi}, st.sampled_from([0.75, 1, 1.25, 2]), st.integers(30, 100)),
    st.builds(lambda low, more, psi: {"kind": "automatic", "min_gpm": low, "max_gpm": low + more, "rated_psi": psi},
              st.integers(20, 200), st.integers(1, 300), st.integers(50, 120)),
    st.builds(lambda set_gpm, psi: {"kind": "selectable", "settings_gpm": [95, 125, 200], "set_gpm": set_gpm, "rated_psi": psi},
              st.sampled_from([95, 125, 200]), st.integers(50, 100)),
    st.builds(lambda psi, gpm: {"kind": "open", "pressure_psi": psi, "flow_gpm": gpm}, st.integers(20, 150), st.integers(100, 900)),
)


def lines_of(ends):
    return st.builds(
        lambda end, coefficient, length_ft, rise_ft, parallel, appliance_psi: line(
            end, coefficient, length_ft, rise_ft=rise_ft, parallel=parallel, appliance_psi=appliance_psi),
        ends, st.sampled_from([0.08, 0.8, 2, 8, 15.5, 24]), st.integers(1, 800), st.integers(-20, 40), st.integers(1, 3),
        st.sampled_from([0, 0, 10, 25]),
    )


TREES = st.lists(
    st.recursive(lines_of(ENDS), lambda inner: lines_of(st.builds(lambda lines: {"lines": lines}, st.lists(inner, min_size=1, max_size=3))), max_leaves=6),
    min_size=1, max_size=3,
)


def nozzles_of(lines):
    """The lines of a tree that end in a nozzle."""
    found = []
    for each in lines:
        found += nozzles_of(each["end"]["lines"]) if "lines" in each["end"] else [each]
    return found


def flowing(run, lines, psi):
    return run("layout.pressure", "flows", layout={"lines": lines}, discharge_psi=psi)


def flows_of(report):
    return {told["id"]: told["flow_gpm"] for told in report["lines"] if told["nozzle"]}


def nozzle_flows(run, lines, psi):
    """The flow of each nozzle at this pump pressure, by the id of its line."""
    return flows_of(flowing(run, lines, psi))
