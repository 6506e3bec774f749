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
      ? "take a cutter of the slot's width, or mill its walls as side passes"
      : "take less per pass",
  ],
  "arc-length": () => ["Length is blank: a full circle is timed", "type the length of the arc"],
  "too-many-passes": (f) => [
    `${f.value} passes would be needed at this radial depth; ${f.limit} is the most`,
    "take more per pass, or a larger cutter",
  ],
});
