// A device's loss and the flow it was measured at, as a link has them: one text, "60@US@1000@US". A phone that knows no such flow would
// take the loss for what it loses at any flow; it refuses this text as no entry, and says that the link cannot be read.
const PARTED = /^([^@]*@\w+)@([^@]*@\w+)$/;

// Both as entries, from a layout that was kept or linked.
export function lossOf({ loss = "", loss_at = "" }, entry) {
  const [, measured, at] = PARTED.exec(loss) ?? [null, loss, loss_at];
  return { loss: entry(measured), loss_at: entry(at) };
}

// A layout as a link has it.
export const linked = (layout) => ({
  ...layout,
  lines: layout.lines.map(({ loss_at, ...line }) => ({
    ...line,
    ...(loss_at && { loss: `${line.loss}@${loss_at}` }),
    end: "lines" in line.end ? linked(line.end) : line.end,
  })),
});
