// What a site is told by, in the order of sheet and CSV.
export const SITE = ["air_f", "water_f", "water_end_f", "barometer_inhg", "altitude_ft", "lift_ft", "depth_ft", "strainer_ft", "suction_size_in", "suction_length_ft", "suction_lines"];
