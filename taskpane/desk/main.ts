/** The desk: bar, grid and pane on one workbook. The one place that wires them together. */
import "./desk.css";
import "../pane.css";
import { sheetHost } from "../host/sheet.ts";
import { type Coming, createFiling } from "./filing.ts";
import { mountGrid } from "./grid/grid.ts";
import type { GridHandle } from "./grid/options.ts";
import { ENGLISH } from "./grid/words.ts";
import { keepCode } from "./keep/offline.ts";
import { createKeeper } from "./keep/work.ts";
import { createLooks } from "./looks.ts";
import type { Place } from "./model/address.ts";
import { FileError } from "./model/types.ts";
import { offering } from "./offering.ts";
import { readInWorker } from "./package/client.ts";
import { openUnpacked } from "./package/unpack.ts";
import { createShell } from "./shell.ts";
import type { mountSide } from "./side.ts";
import { type OpenBook, openBook } from "./workbook.ts";

const DEMO = { file: "demo.xlsx", name: "Demo job.xlsx", words: "The demo job of the Harrow Lane Machine Works." };
const BLANK = { file: "blank.xlsx", name: "Plan.xlsx", words: "A blank planning table, with the lists." };
const CALCULATING = "Still calculating …";
/** Opening that takes longer than this shows how far it is [ms]. */
const PATIENCE = 300;

/** A page that is loaded again waits so long for its old self to let go of the work [ms]. */
const RELOAD = 1500;

const keeper = createKeeper();
let book: OpenBook;
let grid: GridHandle | undefined;
let looks: ReturnType<typeof createLooks> | undefined;
let host: ReturnType<typeof sheetHost> | undefined;
let pane: ReturnType<typeof mountSide> | undefined;

const shell = createShell({
  open: () => void guarded(() => filing.open(shell.input)),
  save: () => void guarded(() => filing.save()),
  saveCopy: () => void guarded(() => filing.saveCopy()),
  saveCsv: () => void guarded(() => filing.saveCsv()),
  blank: () => void guarded(() => ours(BLANK)),
  demo: () => void guarded(() => ours(DEMO)),
  focusGrid: () => grid?.focus(),
  opened: (file) => void guarded(() => filing.take(file)),
});
const filing = createFiling({
  shell,
  keeper,
  book: () => book,
  endEditing: () => grid?.endEditing(true) ?? true,
  read: readFile,
  show,
});

async function guarded(work: () => Promise<void>): Promise<void> {
  try {
    await work();
  } catch (problem) {
    console.error(problem);
    shell.say(`That did not work: ${problem instanceof Error ? problem.message : String(problem)}`, { trouble: true });
  }
}

/** Reads a file of the person's beside the page, which stays alive and can stop it. */
async function readFile(name: string, bytes: Uint8Array) {
  const stop = new AbortController();
  let done = 0;
  let shown = false;
  const show = () => {
    shown = true;
    shell.progress(done, () => stop.abort());
  };
  const late = setTimeout(show, PATIENCE);
  try {
    return await readInWorker(() => new Worker("desk-reader.js"), bytes, {
      signal: stop.signal,
      onProgress: (part) => {
        done = part;
        if (shown) show();
      },
    });
  } catch (problem) {
    if (!(problem instanceof FileError)) throw problem;
    shell.say(`${name}: ${problem.message}`, { trouble: problem.code !== "cancelled" });
    return undefined;
  } finally {
    clearTimeout(late);
    shell.progress(undefined);
  }
}

const session = () => pane?.session.store.get();

/** Puts a workbook into grid and pane; what was open before stays kept in the browser when it has changes. */
function show({ opened, name, words, steps, handle, seen, from }: Coming): void {
  const before = book as OpenBook | undefined;
  before?.close();
  delete document.documentElement.dataset.ready;
  book = openBook(opened, {
    name,
    ...(steps ? { steps } : {}),
    ...(handle ? { handle } : {}),
    ...(seen ? { seen } : {}),
    hints: () => ({ byHand: session()?.byHand ?? {}, score: session()?.score, asked: session()?.asked }),
    onBusy: (busy) => {
      if (busy) shell.say(CALCULATING, { busy: true });
      else if (shell.said() === CALCULATING) shell.say("");
    },
  });
  const { model, planned } = book;
  shell.title(name);
  const place = worthLooking();
  if (place) model.select(place);

  if (grid === undefined) {
    looks = createLooks(model);
    grid = mountGrid(shell.grid, {
      model,
      onLeave: (direction) => shell.leaveGrid(direction),
      classOf: (...at) => looks!.classOf(...at),
      isUsed: (...at) => looks!.isUsed(...at),
      hiddenColumns: (sheet) => looks!.hiddenColumns(sheet),
    });
    host = sheetHost(model, {
      reveal: (at) => reveal(at),
      busy: () => grid!.editing && !grid!.endEditing(true),
      words: ENGLISH.refused,
    });
  } else {
    looks!.setModel(model);
    host!.setModel(model);
    grid.setModel(model);
  }

  const started = keeper.begin({
    name,
    bytes: opened.kept.bytes,
    ...(handle ? { handle } : {}),
    ...(seen ? { seen } : {}),
    ...(from ? { from } : {}),
  });
  keeper.follow(model);
  filing.mark(words);
  model.onChange(() => filing.mark());
  planned.onTrouble((sentence) => shell.say(sentence, { trouble: true }));
  let telling = false;
  planned.onWaiting((rows) => {
    if (rows > 0 && !checking) {
      telling = true;
      shell.say(`Planning ${rows} more ${rows === 1 ? "row" : "rows"} …`, { busy: true });
    } else if (rows === 0 && telling) {
      telling = false;
      shell.say("");
    }
  });
  void started.then(() => offers.refresh());
  void guarded(() => settle(words));
}

/** True while rows are looked through that nobody has changed. */
let checking = false;

/** Says that the plan is there when every cell of it holds its value; then comes the pane, and a look whether all are up to date. */
async function settle(words: string): Promise<void> {
  const own = book;
  await own.calculating.ready();
  await own.planned.settled();
  if (own !== book) return;
  // Of workbooks that are ours there is nothing to tell.
  const unseen =
    own.unseen.length === 0 || words === DEMO.words || words === BLANK.words
      ? ""
      : ` Kept, not shown here: ${own.unseen.join(", ")}.`;
  shell.say(`${words}${unseen}`);
  shell.ready();
  await showSide();
  await new Promise((resolve) => setTimeout(resolve, 300));
  if (own !== book) return;
  checking = true;
  const rows = await own.planned.bringUpToDate();
  checking = false;
  if (rows > 0 && own === book)
    shell.say(
      `${rows === 1 ? "1 row was" : `${rows} rows were`} not up to date and planned again; Ctrl+Z takes that back.`,
    );
}

/** Resolves when what stands on the page now has been drawn; at once where nobody sees it. */
const drawn = () =>
  new Promise<void>((resolve) => {
    if (document.hidden) resolve();
    else requestAnimationFrame(() => setTimeout(resolve, 0));
  });

/** Shows the pane when the plan is on the screen. */
async function showSide(): Promise<void> {
  const script = import("./side.ts");
  await drawn();
  const { mountSide } = await script;
  if (pane !== undefined) return;
  pane = mountSide(shell.pane, host!);
  const said = () => JSON.stringify([session()?.byHand, session()?.asked]);
  let asked = said();
  pane.session.store.subscribe(() => {
    const now = said();
    if (now === asked) return;
    asked = now;
    book.planned.again();
  });
}

/** A row that shows what the plan is for: a thread that stops at a limit, else any row that stops, else one to check. */
function worthLooking(): Place | undefined {
  const [site] = book.planned.sites();
  if (site === undefined) return undefined;
  const { sheet, block, end, matching } = site;
  const at = (list: readonly { readonly at: number; readonly column: { readonly key: string } }[], key: string) =>
    list.find((m) => m.column.key === key)?.at;
  const [verdict, load] = [at(matching.outputs, "verdict"), at(matching.outputs, "load")];
  const operation = at(matching.inputs, "operation");
  const value = (row: number, column: number | undefined) =>
    column === undefined ? undefined : book.model.typed(sheet, row, block.left + column)?.value;
  let best = block.top + 1;
  let most = 0;
  for (let row = block.top + 1; row <= end; row++) {
    const word = value(row, verdict);
    const limit = Number(value(row, load) ?? 0);
    const worth =
      word === "stop"
        ? 2 + (limit > 1 ? 1 + (value(row, operation) === "thread mill" ? 1 : 0) : 0)
        : word === "check"
          ? 1
          : 0;
    if (worth > most) [best, most] = [row, worth];
  }
  return { sheet, row: best, column: block.left + 2 };
}

function reveal(place: Place, focus = false): void {
  shell.show("table");
  grid!.select(place, { focus });
}

/** One of the two workbooks that come with the desk; held once they were fetched, for when the server is gone. */
const fetched = new Map<string, Promise<Uint8Array>>();
function fetchBook(file: string): Promise<Uint8Array> {
  const known = fetched.get(file);
  if (known) return known;
  const got = fetch(file).then(async (answer) => {
    if (!answer.ok) throw new Error(`the desk's own file ${file} is not there (${answer.status})`);
    return new Uint8Array(await answer.arrayBuffer());
  });
  fetched.set(file, got);
  got.catch(() => fetched.delete(file));
  return got;
}

async function ours({ file, name, words }: typeof DEMO): Promise<void> {
  if (!(await filing.mayLeave())) return;
  shell.say("Opening …", { busy: true });
  show({ opened: await openUnpacked(await fetchBook(file)), name, words });
}

const offers = offering({ shell, keeper, show, mayLeave: () => filing.mayLeave() });

async function start(): Promise<void> {
  const mine = keeper.mine();
  if (mine !== undefined && (await offers.bring(mine, RELOAD))) return;
  show({ opened: await openUnpacked(await fetchBook(DEMO.file)), name: DEMO.name, words: DEMO.words });
}

/** For the tests, and for whoever looks at the desk from the browser's console. */
Object.assign(globalThis, {
  tablefeedDesk: {
    valueAt: (place: Place) => host!.valueAt(place),
    reasonAt: (place: Place) => host!.reasonAt(place),
    select: (place: Place) => reveal(place, true),
    unsaved: () => book.model.unsaved(),
  },
});

window.addEventListener("pagehide", () => void keeper.flush());
document.addEventListener("visibilitychange", () => void keeper.flush());
// A tab that was closed meanwhile has let go of its work: it can be offered here.
window.addEventListener("focus", () => void offers.refresh());
window.addEventListener("beforeunload", (event) => {
  // What is kept here comes back by itself; only where nothing is kept is there something to lose.
  if (!filing.isKept() && book.model.unsaved()) event.preventDefault();
});

void guarded(async () => {
  await start();
  // All that may be needed later is fetched while the server is there.
  fetchBook(BLANK.file).catch(() => undefined);
  fetchBook(DEMO.file).catch(() => undefined);
  void import("./calc/calculator.ts").catch(() => undefined);
  void keepCode("desk-offline.js");
});
