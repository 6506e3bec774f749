/** A quote as lines of a table, for the worksheet function and the printed sheet alike. */
import { plural } from "./says.ts";
import type { QuoteRow, QuoteSummary } from "./types.ts";

export interface QuoteLine {
  readonly section: string;
  readonly item: string;
  readonly count?: number;
  readonly minutes?: number;
  readonly money?: number;
  /** 1 is all. */
  readonly share?: number;
}

export const QUOTE_HEADINGS = ["Section", "Item", "Count", "Minutes", "Money", "Share"] as const;

/** Not the bare names of columns: a line of a quote must not look like the headings of a planning table. */
export const QUOTE_SECTIONS = {
  part: "Per part",
  batch: "Whole batch",
  range: "Range",
  operation: "By operation",
  tool: "By tool",
  machine: "By machine",
  dearest: "Costs most",
  out: "Not in the total",
  unpriced: "Not in the money",
  stop: "Stop",
  check: "Check",
  stated: "Stated",
} as const;

const rowText = (r: QuoteRow) => `Row ${r.name}: ${[r.operation, r.feature].filter(Boolean).join(", ")}`;

/** The lines in order: totals first, what is not in them before the details that few read. */
export function quoteLines(q: QuoteSummary): QuoteLine[] {
  const { part, batch, range, operation, tool, machine, dearest, out, unpriced, stop, check, stated } = QUOTE_SECTIONS;
  const total = q.money ?? q.seconds;
  const shareOf = (seconds: number, money: number | undefined) =>
    total > 0 ? (q.money === undefined ? seconds : (money ?? 0)) / total : undefined;
  const kind = (item: string, key: "cutting" | "moving" | "waiting" | "change" | "setup", count?: number) => ({
    section: part,
    item,
    count,
    minutes: q.time[key] / 60,
    money: q.paid?.[key],
    share: shareOf(q.time[key], q.paid?.[key]),
  });
  const row = (section: string, r: QuoteRow, item = rowText(r)): QuoteLine => ({
    section,
    item,
    count: r.quantity,
    minutes: r.seconds / 60,
    money: r.money,
    share: shareOf(r.seconds, r.money),
  });
  const judged = (section: string, rows: readonly QuoteRow[]) =>
    rows.map((r) => row(section, r, `Row ${r.name}: ${r.reason ?? "see the plan"}`));
  const lines: QuoteLine[] = [
    {
      section: part,
      item: "total",
      count: q.rows.length,
      minutes: q.seconds / 60,
      money: q.money,
      share: shareOf(q.seconds, q.money),
    },
    kind("cutting", "cutting"),
    kind("moving", "moving"),
    kind("waiting", "waiting"),
    kind("tool changes", "change", q.changes),
    kind("setup share", "setup"),
  ];
  if (q.paid) {
    lines.push({ section: part, item: "tools", money: q.paid.tool, share: shareOf(0, q.paid.tool) });
  }
  if (q.batch !== undefined) {
    lines.push({
      section: batch,
      item: "total",
      count: q.batch,
      minutes: (q.seconds / 60) * q.batch,
      money: q.money === undefined ? undefined : q.money * q.batch,
    });
  }
  lines.push(
    {
      section: range,
      item: "10 % come out below",
      minutes: q.secondsBand.low / 60,
      money: q.moneyBand?.low,
    },
    { section: range, item: "10 % come out above", minutes: q.secondsBand.high / 60, money: q.moneyBand?.high },
  );
  if (q.leftOut.length > 0) {
    lines.push({
      section: out,
      item: `${plural(q.leftOut.length, "row")} ${q.leftOut.length === 1 ? "has" : "have"} no time: not in the total`,
      count: q.leftOut.length,
    });
    lines.push(...q.leftOut.map((r) => ({ section: out, item: `Row ${r.name}: ${r.reason}` })));
  }
  lines.push(
    ...q.unpriced.map((r) => row(unpriced, r)),
    ...judged(stop, q.stops),
    ...q.operations.map((g) => ({
      section: operation,
      item: g.name,
      count: g.features,
      minutes: g.seconds / 60,
      money: g.money,
      share: g.share,
    })),
    ...q.machines.map((g) => ({
      section: machine,
      item: g.name,
      count: g.rows,
      minutes: g.seconds / 60,
      money: g.money,
      share: g.share,
    })),
    ...q.dearest.map((r) => row(dearest, r)),
  );
  if (q.tools.length > 0) {
    lines.push({
      section: tool,
      item: "Count: tools for the batch. Minutes: cutting per part. Money: tool cost per part. Share: of one edge's life per part.",
    });
  }
  for (const t of q.tools) {
    const parts = t.partsPerEdge === undefined ? undefined : Math.floor(t.partsPerEdge * (1 + 1e-12));
    const life =
      parts === undefined
        ? "no tool life known"
        : parts < 1
          ? "an edge does not last one part"
          : `${plural(parts, "part")} per edge`;
    lines.push({
      section: tool,
      item: `${t.name}: ${plural(t.rows, "row")}, ${life}${t.bought === undefined ? "" : `, tools for the batch ${t.bought.toFixed(2)}`}`,
      count: t.toolsForBatch,
      minutes: t.cutting / 60,
      money: t.edges === undefined ? undefined : t.toolMoney,
      share: t.edges,
    });
  }
  lines.push(...judged(check, q.checks), ...q.assumptions.map((item) => ({ section: stated, item })));
  return lines;
}

/** The lines as cells under QUOTE_HEADINGS; "" where there is nothing. */
export function quoteCells(q: QuoteSummary): (string | number)[][] {
  return quoteLines(q).map((l) => [l.section, l.item, l.count ?? "", l.minutes ?? "", l.money ?? "", l.share ?? ""]);
}
