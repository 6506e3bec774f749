/** Every limit of the row as a share: a bar, and the same in text. */

import type { Units } from "../../src/units.ts";
import type { Limit } from "../../src/words/worded.ts";
import { h, type Part, replace } from "./dom.ts";
import { percent, withUnit, worst } from "./numbers.ts";

export interface LimitFacts {
  readonly limits: readonly Limit[];
  readonly units: Units;
}

const share = (load: number) => `${Math.max(0, Math.min(load / 1.5, 1)) * 100}%`;

export function limits(): Part<LimitFacts> {
  const element = h("ul", { class: "limits" });
  return {
    element,
    show({ limits, units }) {
      const sorted = [...limits].sort((a, b) => worst(b) - worst(a));
      replace(
        element,
        ...sorted.map((limit) => {
          const bar = h(
            "div",
            { class: worst(limit) > 1 ? "bar over" : "bar", "aria-hidden": "true" },
            h("i", {}),
            h("b", {}),
          );
          (bar.firstChild as HTMLElement).style.width = share(limit.load);
          if (limit.band) {
            const band = h("u", {});
            band.style.left = share(limit.band[0]);
            band.style.width = `calc(${share(limit.band[1])} - ${share(limit.band[0])})`;
            bar.append(band);
          }
          const value = withUnit(limit.value, limit.dimension, units);
          const most = withUnit(limit.limit, limit.dimension, units);
          return h(
            "li",
            {},
            h("span", { class: "name" }, limit.name),
            h("span", { class: "load" }, worst(limit) > 1 ? `${percent(worst(limit))}, over` : percent(worst(limit))),
            bar,
            h(
              "span",
              { class: "detail" },
              `${value} against ${most}`,
              limit.band && ` · estimate from ${percent(limit.band[0])} to ${percent(limit.band[1])}`,
            ),
          );
        }),
      );
    },
  };
}
