"""The reference tables, baked from calc: headings and rows of text."""
from calc import hose, nozzle, water
from calc.rounding import plain, rounded
from site_src import data


def _loss_text(loss_psi):
    """Tenths where they tell something, whole psi above."""
    return rounded(loss_psi, 1 if loss_psi < 10 else 0)


def friction():
    """One table a hose: flow, loss per 50 ft and per 100 ft, velocity.

    Returns `{"hose", "rows"}` for every hose of the data files, rows as text.
    """
    return [
        {
            "hose": size,
            "rows": [
                (
                    str(flow_gpm),
                    _loss_text(hose.friction_loss_psi(size["coefficient"], flow_gpm, 50)),
                    _loss_text(hose.friction_loss_psi(size["coefficient"], flow_gpm, 100)),
                    rounded(hose.velocity_ft_per_s(flow_gpm, size["size_in"]), 0),
                )
                for flow_gpm in size["table_gpm"]
            ],
        }
        for size in data.load("hoses")["hose"]
    ]


def tips():
    """Smooth-bore tips in one grid: flow and reaction by nozzle pressure, and each tip's usual pressure."""
    nozzles = data.load("nozzles")
    pressures = nozzles["tips"]["table_psi"]
    return [
        {
            "tip": tip,
            "rows": [
                (
                    str(psi),
                    rounded(nozzle.smooth_bore_flow_gpm(tip["tip_in"], psi), 0),
                    rounded(nozzle.smooth_bore_reaction_lbf(tip["tip_in"], psi), 0),
                    psi == tip["usual_psi"],
                )
                for psi in pressures
            ],
        }
        for tip in nozzles["tip"]
    ]


def fog_reaction():
    """Fog nozzle reaction: a row a flow, a column a nozzle pressure."""
    fog = data.load("nozzles")["fog"]
    return {
        "pressures": [str(psi) for psi in fog["pressures_psi"]],
        "rows": [
            [str(gpm)] + [rounded(nozzle.fog_reaction_lbf(gpm, psi), 0) for psi in fog["pressures_psi"]]
            for gpm in fog["flows_gpm"]
        ],
    }


def elevation():
    """Pressure of height: by feet, exact and by the field rule; and by floors."""
    height = data.load("losses")["height"]
    return {
        "feet": [
            (str(feet), rounded(water.elevation_psi(feet), 1), plain(feet * height["field_psi_per_ft"], 1))
            for feet in height["table_ft"]
        ],
        "floors": [(str(floor), str((floor - 1) * height["floor_psi"])) for floor in range(1, height["floors"] + 1)],
    }


def appliances():
    """Loss of each appliance: label, and (from flow, loss) steps as text."""
    return [
        {
            "appliance": row,
            "steps": [(None if from_gpm == 0 else str(from_gpm), str(psi)) for from_gpm, psi in row["steps"]],
        }
        for row in data.load("losses")["appliance"]
    ]
