// Whose rule a row of the checks is: what was read first, and what that is worth.
export const ruleOf = (row, { data, words }) => (row.source.length ? `${data.sources[row.source[0]]} (${words.basis[row.basis]})` : words.department[row.basis]);
