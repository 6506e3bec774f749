/** Faults in depth and place, and programs that cannot be read. */
import { BONNET, BRACKET, COVER, HOUSING, LOCK_RING, MANIFOLD } from "./jobs.ts";
import { type Fault, hole, line, OTHER, plant, QUARTERS, RADIUS, round, STEPS, thread } from "./planted.ts";

export const FAULTS: readonly Fault[] = [
  // depth
  {
    name: "the thread starts one pitch and a half too high",
    job: HOUSING,
    cuts: (c) => void Object.assign(thread(c), { lows: [thread(c).lows[0]! + 1.9], turns: thread(c).turns - 1.5 }),
    expect: ["20 depth stop"],
    says: /-14\.7 mm.*-16\.6 mm/,
  },
  {
    name: "half a pitch too high",
    job: BONNET,
    cuts: (c) => void Object.assign(thread(c, 1), { lows: [thread(c, 1).lows[0]! + 1] }),
    expect: ["2 depth check"],
  },
  {
    name: "the tip meets the bottom of the hole",
    job: HOUSING,
    style: QUARTERS,
    cuts: (c) => void Object.assign(thread(c), { lows: [-24.4], turns: 21 }),
    expect: ["20 depth stop"],
    says: /below the bottom of the hole/,
  },
  {
    name: "the helix stops below the face",
    job: HOUSING,
    style: STEPS,
    cuts: (c) => void Object.assign(thread(c), { turns: thread(c).turns - 3 }),
    expect: ["20 depth stop"],
    says: /first turns/,
  },
  {
    name: "a boss thread ends too high",
    job: LOCK_RING,
    cuts: (c) => void Object.assign(thread(c), { lows: [thread(c).lows[0]! + 3], turns: thread(c).turns - 2 }),
    expect: ["2 depth stop"],
  },
  {
    name: "the tool is measured at its profile, the program at its tip",
    job: HOUSING,
    zero: "profile",
    expect: ["20 depth check"],
    says: /distance from tip to profile/,
  },
  {
    name: "drilled to the full diameter's depth without the point",
    job: MANIFOLD,
    style: { ...OTHER, units: "mm" },
    cuts: (c) => void Object.assign(hole(c), { bottom: -19.05, pecks: [-15.3, -19.05] }),
    expect: ["B depth check"],
    says: /without the drill's point/,
  },
  {
    name: "drilled 5 mm too shallow, so the thread's tip finds no hole",
    job: HOUSING,
    style: QUARTERS,
    cuts: (c) => void Object.assign(hole(c), { bottom: -14, pecks: [-14] }),
    expect: ["10 depth stop", "10 passes check", "20 hole stop"],
  },
  {
    name: "a through hole that is not through",
    job: BRACKET,
    cuts: (c) => void Object.assign(hole(c), { bottom: -21, pecks: [-21] }),
    expect: ["5 depth stop"],
    says: /is through at/,
  },
  {
    name: "a bore 0.2 too deep",
    job: HOUSING,
    cuts: (c) => void Object.assign(round(c), { levels: [-22.2] }),
    expect: ["30 depth check"],
  },
  {
    name: "a counterbore a millimetre too shallow",
    job: BRACKET,
    style: RADIUS,
    cuts: (c) => void Object.assign(round(c, 1), { levels: [-4] }),
    expect: ["4 depth stop"],
  },
  {
    name: "a slot's last level too deep",
    job: BRACKET,
    cuts: (c) => void Object.assign(line(c), { levels: [-2, -4, -6.3] }),
    expect: ["1 depth check"],
  },
  {
    name: "a full-profile cutter that turns only three quarters",
    job: COVER,
    style: QUARTERS,
    cuts: (c) => void Object.assign(thread(c), { turns: 0.75 }),
    expect: ["1 depth stop"],
    says: /270 degrees/,
  },
  {
    name: "the upper level of a long thread is missing",
    job: COVER,
    cuts: (c) => void Object.assign(thread(c, 1), { lows: [thread(c, 1).lows[0]!] }),
    expect: ["2 depth stop"],
    says: /1 level/,
  },
  // holes under threads
  {
    name: "a thread where nothing is drilled",
    job: HOUSING,
    cuts: (c) => void thread(c).places.splice(2, 1, [70, 25]),
    expect: ["20 hole check"],
    says: /X 70 mm Y 25 mm/,
  },
  {
    name: "the holes are drilled after the threads",
    job: MANIFOLD,
    cuts: (c) => [c[0]!, c[2]!, c[1]!, c[3]!],
    expect: ["C hole stop"],
    says: /only later/,
  },
  // more and less than planned
  {
    name: "a thread that no row has",
    job: HOUSING,
    cuts: (c) => [
      ...c,
      {
        ...thread(c),
        tool: 9,
        rpm: 3000,
        feed: 90,
        radii: [3.1],
        pitch: 2,
        lows: [-41],
        turns: 20,
        places: [[200, 0]],
      },
    ],
    expect: ["not-in-plan check"],
    says: /helix on radius 3\.1 mm with 2 mm per turn/,
  },
  {
    name: "a deep hole that no row has",
    job: HOUSING,
    style: QUARTERS,
    cuts: (c) => [...c, { ...hole(c), tool: 9, rpm: 900, feed: 100, bottom: -60, pecks: [-60], places: [[200, 0]] }],
    expect: ["not-in-plan check"],
  },
  {
    name: "a circle that no row has",
    job: LOCK_RING,
    cuts: (c) => [...c, { ...round(c), tool: 9, rpm: 900, feed: 77, radii: [55], levels: [-31], places: [[200, 0]] }],
    expect: ["not-in-plan check"],
  },
  {
    name: "four holes and threads where the row has three",
    job: HOUSING,
    style: QUARTERS,
    cuts: (c) => {
      hole(c).places = [...hole(c).places, [100, 10]];
    },
    expect: ["10 not-in-plan check"],
    says: /1 more/,
  },
  {
    name: "the bore is missing",
    job: HOUSING,
    cuts: (c) => c.slice(0, 2),
    expect: ["30 not-in-program check"],
  },
  {
    name: "one thread of three is missing",
    job: HOUSING,
    cuts: (c) => void thread(c).places.pop(),
    expect: ["20 not-in-program check"],
    says: /2 of 3/,
  },
  // cannot be read
  {
    name: "a variable in a coordinate",
    job: HOUSING,
    text: (t) => t.replace("X40.000", "X#101"),
    expect: ["unreadable stop"],
    says: /variables/,
  },
  {
    name: "a parameter that is set",
    job: HOUSING,
    text: (t) => t.replace("%\n", "%\nR1=5\n"),
    expect: ["unreadable stop"],
  },
  {
    name: "a loop",
    job: HOUSING,
    text: (t) => t.replace("M30", "GOTO 10\nM30"),
    expect: ["unreadable stop"],
  },
  {
    name: "a macro call",
    job: HOUSING,
    text: (t) => t.replace("M30", "G65 P9010 X1.\nM30"),
    expect: ["unreadable stop"],
  },
  {
    name: "rotated coordinates",
    job: HOUSING,
    text: (t) => t.replace("G0 X10.000", "G68 X0. Y0. R30.\nG0 X10.000"),
    expect: ["unreadable stop"],
  },
  {
    name: "an arc that does not end on its circle",
    job: HOUSING,
    text: (t) => t.replace("M30", "G0 X0. Y0.\nG3 X10. Y0. I3. J0. F100.\nM30"),
    expect: ["unreadable stop"],
    says: /radius 3 mm where it starts, 7 mm where it ends/,
  },
  {
    name: "a subprogram",
    job: HOUSING,
    text: (t) => t.replace("M30", "M98 P200\nM30"),
    expect: ["unreadable check"],
  },
  {
    name: "a code that the standard does not have",
    job: HOUSING,
    text: (t) => t.replace("M30", "G187 P2\nM30"),
    expect: ["unreadable check"],
    says: /G187/,
  },
  {
    name: "a decimal comma",
    job: HOUSING,
    text: (t) => t.replace("X40.000", "X40,000"),
    expect: ["unreadable stop"],
  },
  {
    name: "a rotary axis",
    job: HOUSING,
    text: (t) => t.replace("M30", "G0 B90.\nM30"),
    expect: ["unreadable check"],
  },
];

plant("faults in depth and place, and programs that cannot be read (independent)", FAULTS);
