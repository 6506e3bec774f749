/** Sentences about walls, slots, bores. */
import { findingsOf } from "../../types.ts";

export const walls = findingsOf({
  "cutter-too-large": (f, say) => {
    const [cutter, room] = [say.value(f.value), say.value(f.limit)];
    const text =
      f.into === "hole"
        ? `the cutter ${cutter} does not go into the hole ${room}`
        : f.into === "slot"
          ? `the cutter ${cutter} is wider than the slot ${room}`
          : `the cutter ${cutter} does not fit the ${f.into} ${room}`;
    return [text, "take a smaller cutter"];
  },
  "cutter-short": (f, say) => [
    `the cutter reaches ${say.value(f.limit)}; the wall is ${say.value(f.value)} high`,
    "take a longer cutter",
  ],
  "no-stock": (f, say) => [
    `start diameter ${say.value(f.value)} leaves nothing to cut for ${say.value(f.limit)}`,
    "correct Start diameter or Finish diameter",
  ],
  "radial-over-diameter": (f, say) => [
    `radial depth ${say.value(f.value)} is more than the cutter ${say.value(f.limit)}`,
    f.operation === "slot"
      ? "type the slot's width in Total width, or take a cutter of its width"
      : "take less per pass",
  ],
  "slot-widened": (f, say, severity) => [
    `the cutter of ${say.value(f.limit)} is narrower than the slot of ${say.value(f.value)}: a pass down the middle, then ${f.passes} of ${say.value(f.step)} along its walls${severity === "check" ? "; what these leave of the size tolerance is not judged here" : ""}`,
    severity === "check" ? "plan the walls as side rows, with their radial depth and size tolerance" : "",
  ],
  "arc-length": () => ["Length is blank: a full circle is timed", "type the length of the arc"],
  "stock-handed": (f, say) => [
    `row ${f.row ?? "above"} leaves up to ${say.value(f.value)} a side more than its size says, because its cutter bends: ${say.value(f.stock + f.value)} to cut here`,
    "a spring pass or a wear value in that row, or leave it the stock it needs",
  ],
  "too-many-passes": (f) => [
    `${f.value} passes would be needed at this radial depth; ${f.limit} is the most`,
    "take more per pass, or a larger cutter",
  ],
});
