/** The grid in a real browser: clipboard, choices, rows, order, what is refused. */
import { describe, expect, it } from "vitest";
import { driveGrid } from "./grid-driver.ts";

const d = driveGrid();

describe("blocks from and for other spreadsheets", () => {
  it("gives lines with tabs and quotes, and takes the same back", async () => {
    await d.select(3, 9);
    await d.paste('"two\nlines"\t"say ""A"""\t0.1\n\t3/8\t7');
    expect(await d.row(3, 9, 3)).toEqual(["two\nlines", 'say "A"', 0.1]);
    expect(await d.row(4, 9, 3)).toEqual([null, "3/8", 7]);
    const { text } = await d.copy();
    expect(text).toBe('"two\nlines"\tsay "A"\t0.1\n\t3/8\t7');
  });

  it("takes the exact numbers and the texts of another program's table", async () => {
    await d.select(3, 10);
    await d.paste(
      "0.33\t1/2",
      `<table><tr><td sdval="0.333333333333333">0.33</td><td style="mso-number-format:'\\@'">1/2</td></tr></table>`,
    );
    expect(await d.row(3, 10, 2)).toEqual([0.333333333333333, "1/2"]);
    const { html } = await d.copy();
    expect(html).toContain('sdval="0.333333333333333"');
    expect(html).toContain('<td sdnum="1033;0;@" style="mso-number-format:\'\\@\'">1/2</td>');
  });

  it("carries formulas along inside the desk, and cuts in one step", async () => {
    await d.select(3, 70);
    await d.page.keyboard.type("=J4*2");
    await d.keys("Enter", "ArrowUp");
    const { text } = await d.copy();
    await d.keys("ArrowDown", "ArrowDown");
    await d.paste(text);
    expect(await d.page.evaluate(() => (globalThis as any).tablefeedDesk.formulaAt(5, 70))).toBe("J6*2");
    await d.select(3, 2);
    const before = await d.value(3, 2);
    await d.copy("cut");
    expect(await d.value(3, 2)).toBeNull();
    await d.keys("Control+z");
    expect(await d.value(3, 2)).toBe(before);
  });

  it("grows the table by what is pasted under it", async () => {
    await d.select(41, 1);
    await d.paste("990\tpocket\tbore\n1000\tface\tface");
    const area = await d.page.evaluate(() => (globalThis as any).tablefeedDesk.model.sheet("Plan").tables[0].area);
    expect(area.bottom).toBe(42);
    await d.keys("Control+z");
    expect(
      await d.page.evaluate(() => (globalThis as any).tablefeedDesk.model.sheet("Plan").tables[0].area.bottom),
    ).toBe(40);
  });
});

describe("choices", () => {
  it("filters by what is typed, shows names whole, takes one by arrows and Enter", async () => {
    await d.select(3, 6);
    await d.page.keyboard.type("x5cr");
    const names = await d.page.locator("[role=option]").allTextContents();
    expect(names.length).toBeGreaterThanOrEqual(2);
    expect(new Set(names).size).toBe(names.length);
    // Nothing of a name is cut off.
    const cut = await d.page
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
    expect(await d.page.locator(".tg-chosen").textContent()).toBe("drill");
    await d.keys("ArrowDown", "Enter");
    expect(await d.value(3, 3)).toBe("thread mill");
    await d.page.locator(".tg-drop").click();
    await d.page.getByRole("option", { name: "ream" }).click();
    expect(await d.value(3, 3)).toBe("ream");
  });

  it("keeps a word that is not listed as typed, and says so", async () => {
    await d.select(3, 6);
    await d.page.keyboard.type("Unobtainium");
    await d.keys("Enter");
    expect(await d.value(3, 6)).toBe("Unobtainium");
    expect(await d.news()).toMatch(/not among the choices of Material/);
  });
});

describe("one entry for a block", () => {
  it("Ctrl+Enter puts what was typed into every cell of the block, formulas along with their row, in one step", async () => {
    await d.select(3, 31);
    await d.keys("Shift+ArrowDown", "Shift+ArrowDown");
    const before = await Promise.all([3, 4, 5, 6].map((r) => d.value(r, 31)));
    await d.page.keyboard.type("7.5");
    await d.keys("Control+Enter");
    expect(await Promise.all([3, 4, 5, 6].map((r) => d.value(r, 31)))).toEqual([7.5, 7.5, 7.5, before[3]]);
    expect(await d.at()).toMatchObject({ row: 3, column: 31, area: { top: 3, bottom: 5 } });
    await d.keys("Control+z");
    expect(await Promise.all([3, 4, 5, 6].map((r) => d.value(r, 31)))).toEqual(before);
    await d.select(3, 31);
    await d.keys("Shift+ArrowDown", "Shift+ArrowDown");
    await d.page.keyboard.type("=B4*2");
    await d.keys("Control+Enter");
    const formulas = await d.page.evaluate(() =>
      [3, 4, 5].map((row) => (globalThis as any).tablefeedDesk.model.typed("Plan", row, 31).formula),
    );
    expect(formulas).toEqual(["B4*2", "B5*2", "B6*2"]);
  });
});

describe("rows, order and finding", () => {
  const menu = async (name: RegExp) => {
    await d.keys("Shift+F10");
    await d.page.getByRole("menuitem", { name }).click();
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
    await d.page.keyboard.type("1");
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
    await d.page.getByRole("dialog").getByLabel("ok").uncheck();
    await d.page.getByRole("button", { name: "Apply" }).click();
    expect(await d.news()).toMatch(/26 of 40 rows shown/);
    // Row 1 is ok, as every third after it.
    expect(await d.page.locator('.tg-row[data-row="1"]').count()).toBe(0);
    await d.select(2, 31);
    const kept = await d.value(4, 31);
    await d.paste("11\n22\n33");
    expect([await d.value(2, 31), await d.value(3, 31), await d.value(4, 31), await d.value(5, 31)]).toEqual([
      11,
      22,
      kept,
      33,
    ]);
    await menu(/Show all rows/);
    expect(await d.page.locator('.tg-row[data-row="1"]').count()).toBe(1);
  });

  const shownRows = () =>
    d.page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>(".tg-body .tg-row")]
        .filter((row) => row.getBoundingClientRect().height > 0)
        .map((row) => Number(row.dataset.row)),
    );

  it("takes Enter in the search of a filter: no cell is touched, and the cursor is in view", async () => {
    await d.select(30, 3);
    const before = await d.row(30, 0, 12);
    await d.select(30, 0);
    await menu(/Filter/);
    await d.page.keyboard.type("stop");
    await d.keys("Enter");
    expect(await d.news()).toMatch(/13 of 40 rows shown/);
    const { row } = await d.at();
    expect(row % 3).toBe(0);
    expect(await d.page.locator(`.tg-row[data-row="${row}"] .tg-entry.tg-open`).count()).toBe(0);
    const seen = await d.page.evaluate((r) => {
      const cell = document.querySelector(`.tg-row[data-row="${r}"]`)!.getBoundingClientRect();
      const grid = document.querySelector(".tg-scroll")!.getBoundingClientRect();
      return cell.height > 0 && cell.top >= grid.top && cell.bottom <= grid.bottom;
    }, row);
    expect(seen).toBe(true);
    await d.keys("ArrowDown");
    expect(await d.row(30, 0, 12)).toEqual(before);
    await d.keys("Control+z");
    expect(await d.news()).toMatch(/nothing to undo/);
  });

  it("deletes the rows that are to be seen and none between them, in one step", async () => {
    const numbers = async () => (await Promise.all([1, 2, 3, 4, 5, 6, 7].map((r) => d.value(r, 1)))).map(Number);
    const before = await numbers();
    await d.select(3, 0);
    await menu(/Filter/);
    await d.page.keyboard.type("stop");
    await d.keys("Enter");
    await d.select(3, 1);
    await d.keys("Shift+ArrowDown");
    await menu(/Delete 2 rows/);
    // Rows 3 and 6 are gone, 4 and 5 are there.
    expect(await numbers()).toEqual([10, 20, 40, 50, 70, 80, 90]);
    expect((await shownRows())[0]).toBe(7);
    await d.keys("Control+z");
    expect(await numbers()).toEqual(before);
    expect((await shownRows()).slice(0, 3)).toEqual([3, 6, 9]);
  });

  it("shows a row that is inserted under a filter, and keys go into it", async () => {
    await d.select(3, 0);
    await menu(/Filter/);
    await d.page.keyboard.type("stop");
    await d.keys("Enter");
    await d.select(3, 2);
    await menu(/Insert 1 row below/);
    expect((await shownRows()).slice(0, 3)).toEqual([3, 4, 7]);
    await d.page.keyboard.type("new one");
    await d.keys("Enter");
    expect(await d.value(4, 2)).toBe("new one");
    expect((await shownRows()).slice(0, 3)).toEqual([3, 4, 7]);
  });

  it("keeps to its filter when rows are sorted, and when that is taken back", async () => {
    await d.start("rows=40&verdicts=no");
    await d.select(3, 0);
    await menu(/Filter/);
    await d.page.keyboard.type("stop");
    await d.keys("Enter");
    const verdicts = async () => Promise.all((await shownRows()).filter((r) => r <= 40).map((r) => d.value(r, 0)));
    await d.select(3, 1);
    await menu(/largest first/);
    expect(new Set(await verdicts())).toEqual(new Set(["stop"]));
    await d.keys("Control+z");
    expect(new Set(await verdicts())).toEqual(new Set(["stop"]));
    expect((await verdicts()).length).toBe(13);
  });

  it("finds a text on every sheet and goes through what it found", async () => {
    await d.select(3, 3);
    await d.keys("Control+f");
    await d.page.keyboard.type("EN-GJL-250");
    expect(await d.page.textContent(".tg-count")).toMatch(/^1 of \d+$/);
    expect((await d.at()).sheet).toBe("Materials");
    await d.keys("Escape");
    expect(await d.page.evaluate(() => document.activeElement?.className)).toContain("tg-entry");
  });
});

describe("what is refused", () => {
  it("says why, keeps the text open to be mended, and leaves the cell as it was", async () => {
    await d.page.evaluate(() => {
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
    await d.page.keyboard.type("5");
    await d.keys("Enter");
    expect(await d.news()).toBe("B47 is part of the answer of the formula in B46. Change the formula there.");
    expect(await d.page.locator(".tg-news.tg-refused").isVisible()).toBe(true);
    expect(await d.at()).toMatchObject({ row: 46, column: 1 });
    expect(await d.value(46, 1)).toBeNull();
    await d.page.focus("#other");
    expect(await d.news()).toMatch(/^Not entered: “5”\. B47 is part/);
    expect(await d.value(46, 1)).toBeNull();
  });
});
