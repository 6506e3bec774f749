/**
 * A quote that stands: what a part takes and costs, by kind of time, operation, tool and machine; how sure that is; what
 * was assumed; and which rows are not in it. It adds up the rows' own numbers and says where it departs from them.
 */
import { count, within } from "../check.ts";
import { type Blocks, planRows } from "../plan/table.ts";
import { type Lists, type ReadRow, readLists, readRows } from "../table/read.ts";
import type { RowPlan } from "../words/worded.ts";
import { scatterBand } from "./band.ts";
import { countedRows, LARGEST_BATCH } from "./rows.ts";
import { quoteAssumptions } from "./says.ts";
import type { Paid, QuoteGroup, QuoteOptions, QuoteRow, QuoteSummary, QuoteTool, Spent } from "./types.ts";

/** How many of the dearest rows are named. */
const NAMED = 5;

/**
 * Adds up planned rows. `lines` and `rows` are the plan and the reading of the same table, place by place.
 * Throws TradeError "range" when the batch is no whole number of at least 1 (a billion at most).
 */
export function quote(
  lines: readonly (RowPlan | undefined)[],
  rows: readonly ReadRow[],
  lists: Lists,
  options: QuoteOptions = {},
): QuoteSummary {
  if (options.batch !== undefined) count("batch", within("batch", options.batch, 1, LARGEST_BATCH));
  const { counted, leftOut, changes } = countedRows(lines, rows, lists, options);
  const sum = (of: (row: QuoteRow) => number | undefined) => counted.reduce((total, row) => total + (of(row) ?? 0), 0);
  const spent = (of: (row: QuoteRow) => Spent | undefined): Spent => ({
    cutting: sum((r) => of(r)?.cutting),
    moving: sum((r) => of(r)?.moving),
    waiting: sum((r) => of(r)?.waiting),
    change: sum((r) => of(r)?.change),
    setup: sum((r) => of(r)?.setup),
  });
  const time = spent((r) => r.time);
  const seconds = sum((r) => r.seconds);
  const priced = counted.some((r) => r.paid !== undefined);
  const paid: Paid | undefined = priced ? { ...spent((r) => r.paid), tool: sum((r) => r.paid?.tool) } : undefined;
  const money = priced ? sum((r) => r.money) : undefined;
  const weight = (r: QuoteRow) => (priced ? (r.money ?? 0) : r.seconds);
  const total = priced ? money! : seconds;
  const groups = (of: (row: QuoteRow) => string) => grouped(counted, of, weight, total);

  const batches = new Set(counted.map((r) => r.batch));
  const lost = Math.max(0, time.cutting - sum((r) => r.ideal));
  const running = seconds - time.setup;
  const moves = ({ moving, waiting, change }: Spent) => moving + waiting + change;
  const summary: Omit<QuoteSummary, "assumptions"> = {
    currency: options.currency?.trim() || undefined,
    batch: batches.size === 1 ? [...batches][0] : undefined,
    rows: counted,
    time,
    seconds,
    paid,
    money,
    changes,
    changesSaved: counted.length - changes,
    acceleration: { seconds: lost, share: running > 0 ? lost / running : 0 },
    operations: groups((r) => r.operation).map(([group]) => group),
    tools: groups((r) => r.tool).map(([group, members]) => toolGroup(group, members, lists)),
    machines: groups((r) => r.machine).map(([group]) => group),
    dearest: [...counted].sort((a, b) => weight(b) - weight(a) || a.at - b.at).slice(0, NAMED),
    leftOut,
    unpriced: priced ? counted.filter((r) => r.paid === undefined) : [],
    stops: counted.filter((r) => r.verdict === "stop"),
    checks: counted.filter((r) => r.verdict === "check"),
    secondsBand: scatterBand({ cutting: time.cutting, moves: moves(time), setup: time.setup, tool: 0 }),
    moneyBand: paid && scatterBand({ cutting: paid.cutting, moves: moves(paid), setup: paid.setup, tool: paid.tool }),
    own: { seconds: sum((r) => r.own.seconds), money: priced ? sum((r) => r.paid && r.own.money) : undefined },
  };
  return { ...summary, assumptions: quoteAssumptions(summary, lists) };
}

/** Reads, plans and quotes a table given as blocks of cells, each with its heading row. */
export function quoteTable(blocks: Blocks, options: QuoteOptions = {}): QuoteSummary {
  const lists = readLists(blocks.materials, blocks.tools, blocks.machines);
  const rows = readRows(blocks.rows);
  return quote(planRows(rows, lists, false), rows, lists, options);
}

/** Groups by a name without regard to case, the heaviest first. */
function grouped(
  rows: readonly QuoteRow[],
  of: (row: QuoteRow) => string,
  weight: (row: QuoteRow) => number,
  total: number,
): [QuoteGroup, QuoteRow[]][] {
  const members = new Map<string, QuoteRow[]>();
  for (const row of rows) {
    const key = of(row).toLowerCase();
    const found = members.get(key);
    if (found) found.push(row);
    else members.set(key, [row]);
  }
  const add = (list: readonly QuoteRow[], value: (row: QuoteRow) => number) => list.reduce((s, r) => s + value(r), 0);
  return [...members.values()]
    .map((list): [QuoteGroup, QuoteRow[]] => [
      {
        name: of(list[0]!),
        rows: list.length,
        features: add(list, (r) => r.quantity),
        seconds: add(list, (r) => r.seconds),
        cutting: add(list, (r) => r.time.cutting),
        money: list.some((r) => r.paid) ? add(list, (r) => r.money ?? 0) : undefined,
        share: total > 0 ? add(list, weight) / total : 0,
      },
      list,
    ])
    .sort(([a, x], [b, y]) => b.share - a.share || b.seconds - a.seconds || x[0]!.at - y[0]!.at);
}

/** A whole number of edges or tools is not missed for a rounding error. */
const roundedUp = (value: number) => Math.max(1, Math.ceil(value * (1 - 1e-12)));

function toolGroup(group: QuoteGroup, rows: readonly QuoteRow[], lists: Lists): QuoteTool {
  const alive = rows.filter((r) => r.edges !== undefined);
  const entry = lists.tools.find(group.name);
  const toolMoney = rows.some((r) => r.paid) ? rows.reduce((s, r) => s + (r.paid?.tool ?? 0), 0) : undefined;
  const base = { ...group, toolMoney, rowsWithoutLife: rows.length - alive.length };
  if (alive.length === 0) return base;
  const edges = alive.reduce((s, r) => s + r.edges!, 0);
  const more = { ...base, edges, partsPerEdge: edges > 0 ? 1 / edges : undefined };
  if (alive.some((r) => r.batch === undefined)) return more;
  const edgesForBatch = roundedUp(alive.reduce((s, r) => s + r.edges! * r.batch!, 0));
  const toolsForBatch = roundedUp(edgesForBatch / (entry?.edges ?? 1));
  const bought = entry?.price === undefined ? undefined : toolsForBatch * entry.price;
  return { ...more, edgesForBatch, toolsForBatch, bought };
}
