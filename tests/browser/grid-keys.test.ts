/** The grid in a real browser: keyboard, clipboard, choices, undo, what is refused. */
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { type GridPage, type GridSite, openGrid, serveGrid } from "./grid-host.ts";
import { startBrowser } from "./page.ts";

type Value = string | number | boolean | null;
const desk = (page: Page) => ({
  value: (row: number, column: number, sheet = "Plan"): Promise<Value> =>
    page.evaluate(([s, r, c]) => (globalThis as any).tablefeedDesk.valueAt({ sheet: s, row: r, column: c }), [
      sheet,
      row,
      column,
    ] as const),
  select: (row: number, column: number, sheet = "Plan") =>
    page.evaluate(([s, r, c]) => (globalThis as any).tablefeedDesk.select({ sheet: s, row: r, column: c }), [
      sheet,
      row,
      column,
    ] as const),
  at: (): Promise<{ sheet: string; row: number; column: number; area: unknown }> =>
    page.evaluate(() => (globalThis as any).tablefeedDesk.model.selection()),
  row: (row: number, from: number, count: number): Promise<Value[]> =>
    page.evaluate(
      ([r, f, n]) =>
        Array.from({ length: n }, (_, i) =>
          (globalThis as any).tablefeedDesk.valueAt({ sheet: "Plan", row: r, column: f + i }),
        ),
      [row, from, count] as const,
    ),
  news: () => page.textContent(".tg-news"),
  async keys(...keys: string[]) {
    for (const key of keys) await page.keyboard.press(key);
  },
});

let browser: Browser;
let site: GridSite;
let open: GridPage;
let page: Page;
let d: ReturnType<typeof desk>;
const start = async (query = "rows=40", options = {}) => {
  await open?.close();
  open = await openGrid(browser, site, query, options);
  page = open.page;
  d = desk(page);
};
beforeAll(async () => {
  site = await serveGrid();
  browser = await startBrowser();
});
afterAll(async () => {
  await browser?.close();
  await site?.close();
});
beforeEach(() => start());
afterEach(() => expect(open.complaints).toEqual([]));

/** Puts text on the clipboard as another program would, and pastes it. */
async function paste(text: string, html?: string): Promise<void> {
  await page.evaluate(
    ([t, h]) => {
      const data = new DataTransfer();
      data.setData("text/plain", t!);
      if (h) data.setData("text/html", h);
      document.activeElement!.dispatchEvent(
        new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }),
      );
    },
    [text, html],
  );
}
async function copy(type: "copy" | "cut" = "copy"): Promise<{ text: string; html: string }> {
  return page.evaluate((t) => {
    const data = new DataTransfer();
    document.activeElement!.dispatchEvent(
      new ClipboardEvent(t, { clipboardData: data, bubbles: true, cancelable: true }),
    );
    return { text: data.getData("text/plain"), html: data.getData("text/html") };
  }, type);
}

describe("moving about", () => {
  it("moves by arrows, Tab, Enter and their opposites, and Enter goes back to where Tab began", async () => {
    await d.select(3, 4);
    await d.keys("ArrowRight", "ArrowDown", "ArrowLeft", "ArrowUp");
    expect(await d.at()).toMatchObject({ row: 3, column: 4 });
    await d.keys("Tab", "Tab", "Shift+Tab");
    expect(await d.at()).toMatchObject({ row: 3, column: 5 });
    await d.keys("Enter");
    expect(await d.at()).toMatchObject({ row: 4, column: 4 });
    await d.keys("Shift+Enter");
    expect(await d.at()).toMatchObject({ row: 3, column: 4 });
  });

  it("jumps to the ends of what is filled, to the sheet's ends, and by pages", async () => {
    await d.select(3, 1);
    await d.keys("Control+ArrowDown");
    expect(await d.at()).toMatchObject({ row: 40, column: 1 });
    await d.keys("Control+ArrowUp");
    expect(await d.at()).toMatchObject({ row: 0, column: 1 });
    await d.keys("Control+End");
    expect((await d.at()).row).toBe(40);
    await d.keys("Control+Home");
    expect(await d.at()).toMatchObject({ row: 1 });
    await d.keys("Home", "PageDown");
    expect((await d.at()).row).toBeGreaterThan(10);
    await d.keys("PageUp");
    expect((await d.at()).row).toBeLessThan(3);
  });

  it("stretches a block by Shift, takes the table and then everything by Ctrl+A", async () => {
    await d.select(3, 4);
    await d.keys("Shift+ArrowDown", "Shift+ArrowDown", "Shift+ArrowRight");
    expect((await d.at()).area).toEqual({ top: 3, bottom: 5, left: 4, right: 5 });
    expect(await page.locator('[role=gridcell][aria-selected="true"]').count()).toBe(6);
    await d.keys("Control+a");
    expect((await d.at()).area).toMatchObject({ top: 0, left: 0, bottom: 40 });
    await d.keys("Control+a");
    expect((await d.at()).area).toMatchObject({ bottom: 1_048_575, right: 16_383 });
  });

  it("changes the sheet by Ctrl+PageDown and by its tab, and remembers where it was", async () => {
    await d.select(30, 20);
    await d.keys("Control+PageDown");
    expect((await d.at()).sheet).toBe("Materials");
    expect(await page.getAttribute("[role=grid]", "aria-label")).toBe("Sheet Materials");
    await d.keys("ArrowDown");
    await page.keyboard.type("Brass of ours");
    await d.keys("Enter");
    expect(await d.value(1, 0, "Materials")).toBe("Brass of ours");
    await page.getByRole("tab", { name: "Plan" }).click();
    expect(await d.at()).toMatchObject({ sheet: "Plan", row: 30, column: 20 });
    await page.keyboard.type("7");
    await d.keys("Enter");
    expect(await d.value(30, 20)).toBe(7);
  });

  it("hands the focus out by F6, also in the middle of typing, and keys elsewhere do not reach it", async () => {
    await d.select(3, 5);
    await page.keyboard.type("12");
    await d.keys("F6");
    expect(await page.evaluate(() => [document.activeElement?.id, (globalThis as any).tablefeedDesk.left])).toEqual([
      "after",
      ["next"],
    ]);
    expect(await d.value(3, 5)).toBe(12);
    await page.focus("#other");
    await page.keyboard.type("99");
    await d.keys("Delete", "Control+z", "ArrowDown");
    expect(await d.value(3, 5)).toBe(12);
    expect(await d.at()).toMatchObject({ row: 3, column: 5 });
    await d.select(3, 5);
    await d.keys("Control+Shift+F6");
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("before");
  });

  it("goes to the address that is written above the sheet, and says when there is none", async () => {
    await page.fill(".tg-address", "Materials!B3");
    await d.keys("Enter");
    expect(await d.at()).toMatchObject({ sheet: "Materials", row: 2, column: 1 });
    await page.fill(".tg-address", "nowhere");
    await page.focus(".tg-address");
    await d.keys("Enter");
    expect(await d.news()).toMatch(/“nowhere” is no cell/);
  });
});

describe("typing and editing", () => {
  it("replaces by typing, edits by F2, gives up by Escape, clears by Delete", async () => {
    await d.select(3, 2);
    const before = await d.value(3, 2);
    await page.keyboard.type("new");
    await d.keys("Escape");
    expect(await d.value(3, 2)).toBe(before);
    await d.keys("F2");
    await page.keyboard.type(" II");
    await d.keys("ArrowLeft", "ArrowLeft");
    await page.keyboard.type("-");
    await d.keys("Enter");
    expect(await d.value(3, 2)).toBe(`${before} -II`);
    await d.select(3, 2);
    await d.keys("Delete");
    expect(await d.value(3, 2)).toBeNull();
  });

  it("keeps what is being typed when the focus goes elsewhere", async () => {
    await d.select(3, 9);
    await page.keyboard.type("3/8");
    await page.focus("#other");
    expect(await d.value(3, 9)).toBe("3/8");
  });

  it("keeps line breaks of a cell through F2 and makes one by Alt+Enter", async () => {
    await d.select(3, 2);
    await page.keyboard.type("one");
    await d.keys("Alt+Enter");
    await page.keyboard.type("two");
    await d.keys("Enter");
    expect(await d.value(3, 2)).toBe("one\ntwo");
    await d.select(3, 2);
    await d.keys("F2");
    await page.keyboard.type("!");
    await d.keys("Tab");
    expect(await d.value(3, 2)).toBe("one\ntwo!");
  });

  it("takes the text of an input method, the first character included", async () => {
    await d.select(3, 2);
    await open.session.send("Input.imeSetComposition", { text: "か", selectionStart: 1, selectionEnd: 1 });
    await open.session.send("Input.imeSetComposition", { text: "かな", selectionStart: 2, selectionEnd: 2 });
    await open.session.send("Input.insertText", { text: "仮名" });
    await d.keys("Enter");
    expect(await d.value(3, 2)).toBe("仮名");
  });

  it("reads a decimal comma where the browser's language has one, and shows it", async () => {
    await start("rows=40&locale=de-DE");
    await d.select(3, 10);
    await page.keyboard.type("0,785");
    await d.keys("Tab");
    await page.keyboard.type("12.5");
    await d.keys("Enter");
    expect(await d.row(3, 10, 2)).toEqual([0.785, 12.5]);
    expect(await page.textContent('.tg-row[data-row="3"] [data-column="10"]')).toBe("0,785");
  });

  it("never guesses at a comma: it stays text and the line says so", async () => {
    await d.select(3, 22);
    await page.keyboard.type("1,234");
    await d.keys("Enter");
    expect(await d.value(3, 22)).toBe("1,234");
    expect(await d.news()).toMatch(/“1,234” stays text/);
  });

  it("fills a formula's reference by a click on a cell", async () => {
    await d.select(3, 70);
    await page.keyboard.type("=");
    await page.locator('.tg-row[data-row="3"] [data-column="69"]').click();
    await page.keyboard.type("*2");
    await d.keys("Enter");
    expect(await page.evaluate(() => (globalThis as any).tablefeedDesk.formulaAt(3, 70))).toBe("BR4*2");
  });
});

describe("one step of undo for each thing done", () => {
  it("takes back a typed cell with the verdict that followed from it", async () => {
    await d.select(1, 5);
    const before = await d.row(1, 0, 8);
    await page.keyboard.type("9");
    await d.keys("Enter");
    expect(await d.value(1, 5)).toBe(9);
    expect(await d.value(1, 0)).not.toBe(before[0]);
    await d.keys("Control+z");
    expect(await d.row(1, 0, 8)).toEqual(before);
    await d.keys("Control+y");
    expect(await d.value(1, 5)).toBe(9);
    expect(await page.evaluate(() => (globalThis as any).tablefeedDesk.unsaved())).toBe(true);
    await d.keys("Control+z");
    expect(await page.evaluate(() => (globalThis as any).tablefeedDesk.unsaved())).toBe(false);
  });

  it("takes back a paste, a cleared block and a fill, each whole", async () => {
    await d.select(3, 9);
    const before = await Promise.all([3, 4, 5].map((row) => d.row(row, 9, 3)));
    await paste("M6\t5\t6\nM8\t6.8\t8");
    expect(await d.row(4, 9, 3)).toEqual(["M8", 6.8, 8]);
    expect((await d.at()).area).toEqual({ top: 3, bottom: 4, left: 9, right: 11 });
    await d.keys("Delete");
    expect(await d.row(3, 9, 3)).toEqual([null, null, null]);
    await d.keys("Control+z");
    expect(await d.row(4, 9, 3)).toEqual(["M8", 6.8, 8]);
    await d.select(3, 9);
    await d.keys("Shift+ArrowDown", "Shift+ArrowDown", "Control+d");
    expect(await d.value(5, 9)).toBe("M6");
    await d.keys("Control+z", "Control+z");
    expect(await Promise.all([3, 4, 5].map((row) => d.row(row, 9, 3)))).toEqual(before);
  });
});

describe("blocks from and for other spreadsheets", () => {
  it("gives lines with tabs and quotes, and takes the same back", async () => {
    await d.select(3, 9);
    await paste('"two\nlines"\t"say ""A"""\t0.1\n\t3/8\t7');
    expect(await d.row(3, 9, 3)).toEqual(["two\nlines", 'say "A"', 0.1]);
    expect(await d.row(4, 9, 3)).toEqual([null, "3/8", 7]);
    const { text } = await copy();
    expect(text).toBe('"two\nlines"\tsay "A"\t0.1\n\t3/8\t7');
  });

  it("takes the exact numbers and the texts of another program's table", async () => {
    await d.select(3, 10);
    await paste(
      "0.33\t1/2",
      `<table><tr><td sdval="0.333333333333333">0.33</td><td style="mso-number-format:'\\@'">1/2</td></tr></table>`,
    );
    expect(await d.row(3, 10, 2)).toEqual([0.333333333333333, "1/2"]);
    const { html } = await copy();
    expect(html).toContain('sdval="0.333333333333333"');
    expect(html).toContain('<td sdnum="1033;0;@" style="mso-number-format:\'\\@\'">1/2</td>');
  });

  it("carries formulas along inside the desk, and cuts in one step", async () => {
    await d.select(3, 70);
    await page.keyboard.type("=J4*2");
    await d.keys("Enter", "ArrowUp");
    const { text } = await copy();
    await d.keys("ArrowDown", "ArrowDown");
    await paste(text);
    expect(await page.evaluate(() => (globalThis as any).tablefeedDesk.formulaAt(5, 70))).toBe("J6*2");
    await d.select(3, 2);
    const before = await d.value(3, 2);
    await copy("cut");
    expect(await d.value(3, 2)).toBeNull();
    await d.keys("Control+z");
    expect(await d.value(3, 2)).toBe(before);
  });

  it("grows the table by what is pasted under it", async () => {
    await d.select(41, 1);
    await paste("990\tpocket\tbore\n1000\tface\tface");
    const area = await page.evaluate(() => (globalThis as any).tablefeedDesk.model.sheet("Plan").tables[0].area);
    expect(area.bottom).toBe(42);
    await d.keys("Control+z");
    expect(await page.evaluate(() => (globalThis as any).tablefeedDesk.model.sheet("Plan").tables[0].area.bottom)).toBe(
      40,
    );
  });
});

describe("choices", () => {
  it("filters by what is typed, shows names whole, takes one by arrows and Enter", async () => {
    await d.select(3, 6);
    await page.keyboard.type("x5cr");
    const names = await page.locator("[role=option]").allTextContents();
    expect(names.length).toBeGreaterThanOrEqual(2);
    expect(new Set(names).size).toBe(names.length);
    // Nothing of a name is cut off.
    const cut = await page
      .locator("[role=option]")
      .evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth).length);
    expect(cut).toBe(0);
    await d.keys("ArrowDown", "ArrowDown", "Enter");
    expect(await d.value(3, 6)).toBe(names[1]);
    expect(await d.at()).toMatchObject({ row: 3, column: 6 });
  });

  it("opens by Alt+ArrowDown on what stands in the cell, and by its button", async () => {
    await d.select(3, 3);
    await d.keys("Alt+ArrowDown");
    expect(await page.locator(".tg-chosen").textContent()).toBe("drill");
    await d.keys("ArrowDown", "Enter");
    expect(await d.value(3, 3)).toBe("thread mill");
    await page.locator(".tg-drop").click();
    await page.getByRole("option", { name: "ream" }).click();
    expect(await d.value(3, 3)).toBe("ream");
  });

  it("keeps a word that is not listed as typed, and says so", async () => {
    await d.select(3, 6);
    await page.keyboard.type("Unobtainium");
    await d.keys("Enter");
    expect(await d.value(3, 6)).toBe("Unobtainium");
    expect(await d.news()).toMatch(/not among the choices of Material/);
  });
});

describe("rows, order and finding", () => {
  const menu = async (name: RegExp) => {
    await d.keys("Shift+F10");
    await page.getByRole("menuitem", { name }).click();
  };

  it("inserts and deletes rows inside the table, and takes it back", async () => {
    await d.select(3, 1);
    await menu(/Insert 1 row above/);
    expect(await d.value(3, 1)).toBeNull();
    expect(await d.value(4, 1)).toBe(30);
    await d.keys("Control+z");
    expect(await d.value(3, 1)).toBe(30);
    await menu(/Delete 1 row/);
    expect(await d.value(3, 1)).toBe(40);
    await d.keys("Control+z");
    expect(await d.value(3, 1)).toBe(30);
  });

  it("sorts whole rows in one step", async () => {
    await d.select(3, 5);
    await page.keyboard.type("1");
    await d.keys("Enter", "ArrowUp");
    const row = await d.row(3, 1, 12);
    await menu(/smallest first/);
    expect(await d.row(1, 1, 12)).toEqual(row);
    await d.keys("Control+z");
    expect(await d.row(3, 1, 12)).toEqual(row);
  });

  it("hides rows by a filter, and pastes past what is hidden", async () => {
    await d.select(3, 0);
    await menu(/Filter/);
    await page.getByRole("dialog").getByLabel("ok").uncheck();
    await page.getByRole("button", { name: "Apply" }).click();
    expect(await d.news()).toMatch(/26 of 40 rows shown/);
    // Row 1 is ok, as every third after it.
    expect(await page.locator('.tg-row[data-row="1"]').count()).toBe(0);
    await d.select(2, 31);
    const kept = await d.value(4, 31);
    await paste("11\n22\n33");
    expect([await d.value(2, 31), await d.value(3, 31), await d.value(4, 31), await d.value(5, 31)]).toEqual([
      11,
      22,
      kept,
      33,
    ]);
    await menu(/Show all rows/);
    expect(await page.locator('.tg-row[data-row="1"]').count()).toBe(1);
  });

  it("finds a text on every sheet and goes through what it found", async () => {
    await d.select(3, 3);
    await d.keys("Control+f");
    await page.keyboard.type("EN-GJL-250");
    expect(await page.textContent(".tg-count")).toMatch(/^1 of \d+$/);
    expect((await d.at()).sheet).toBe("Materials");
    await d.keys("Escape");
    expect(await page.evaluate(() => document.activeElement?.className)).toContain("tg-entry");
  });
});

describe("what is refused", () => {
  it("says why, keeps the text open to be mended, and leaves the cell as it was", async () => {
    await page.evaluate(() => {
      const { model } = (globalThis as any).tablefeedDesk;
      model.apply(
        [
          {
            kind: "cell",
            sheet: "Plan",
            row: 45,
            column: 1,
            value: 1,
            formula: "SEQUENCE(3)",
            array: { area: { top: 45, bottom: 47, left: 1, right: 1 }, dynamic: false },
          },
        ],
        { by: "person" },
      );
    });
    await d.select(46, 1);
    await page.keyboard.type("5");
    await d.keys("Enter");
    expect(await d.news()).toBe("B47 is part of the answer of the formula in B46. Change the formula there.");
    expect(await page.locator(".tg-news.tg-refused").isVisible()).toBe(true);
    expect(await d.at()).toMatchObject({ row: 46, column: 1 });
    expect(await d.value(46, 1)).toBeNull();
    await page.focus("#other");
    expect(await d.news()).toMatch(/^Not entered: “5”\. B47 is part/);
    expect(await d.value(46, 1)).toBeNull();
  });
});

describe("small things that keep numbers right", () => {
  it("shows the sign from the first digit on in a cell that shows per cent", async () => {
    await page.evaluate(() =>
      (globalThis as any).tablefeedDesk.model.apply(
        [{ kind: "cell", sheet: "Plan", row: 3, column: 29, value: 0.5, numberFormat: "0%" }],
        { by: "person" },
      ),
    );
    await d.select(3, 29);
    await page.keyboard.type("12");
    expect(await page.inputValue(".tg-entry")).toBe("12%");
    await d.keys("Enter", "ArrowUp");
    expect(await d.value(3, 29)).toBe(0.12);
    await page.keyboard.type("7%");
    await d.keys("Enter");
    expect(await d.value(3, 29)).toBe(0.07);
  });

  it("shows what an undo took back, wherever it is", async () => {
    await d.select(3, 5);
    await page.keyboard.type("8");
    await d.keys("Enter", "Control+PageDown", "Control+z");
    expect(await d.at()).toMatchObject({ sheet: "Plan", row: 3, column: 5 });
  });

  it("offers the table's choices in the row that it grew by", async () => {
    await page.evaluate(() => {
      const { model } = (globalThis as any).tablefeedDesk;
      for (const one of model.sheet("Plan").choices) one.areas[0].bottom = 40;
    });
    await d.select(41, 2);
    await page.keyboard.type("new");
    await d.keys("Tab", "Alt+ArrowDown");
    expect(await page.locator("[role=option]").first().textContent()).toBe("drill");
  });
});
