/** The grid in a real browser: keyboard, typing, undo. */
import { describe, expect, it } from "vitest";
import { driveGrid } from "./grid-driver.ts";

const d = driveGrid();

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
    expect(await d.page.locator('[role=gridcell][aria-selected="true"]').count()).toBe(6);
    // Quantity is 4 in each of the rows.
    expect(await d.page.textContent(".tg-content")).toBe("E4:F6: 3 rows, 2 columns; 3 numbers, sum 12");
    await d.keys("Control+a");
    expect((await d.at()).area).toMatchObject({ top: 0, left: 0, bottom: 40 });
    await d.keys("Control+a");
    expect((await d.at()).area).toMatchObject({ bottom: 1_048_575, right: 16_383 });
  });

  it("changes the sheet by Ctrl+PageDown and by its tab, and remembers where it was", async () => {
    await d.select(30, 20);
    await d.keys("Control+PageDown");
    expect((await d.at()).sheet).toBe("Materials");
    expect(await d.page.getAttribute("[role=grid]", "aria-label")).toBe("Sheet Materials");
    await d.keys("ArrowDown");
    await d.page.keyboard.type("Brass of ours");
    await d.keys("Enter");
    expect(await d.value(1, 0, "Materials")).toBe("Brass of ours");
    await d.page.getByRole("tab", { name: "Plan" }).click();
    expect(await d.at()).toMatchObject({ sheet: "Plan", row: 30, column: 20 });
    await d.page.keyboard.type("7");
    await d.keys("Enter");
    expect(await d.value(30, 20)).toBe(7);
  });

  it("hands the focus out by F6, also in the middle of typing, and keys elsewhere do not reach it", async () => {
    await d.select(3, 5);
    await d.page.keyboard.type("12");
    await d.keys("F6");
    expect(await d.page.evaluate(() => [document.activeElement?.id, (globalThis as any).tablefeedDesk.left])).toEqual([
      "after",
      ["next"],
    ]);
    expect(await d.value(3, 5)).toBe(12);
    await d.page.focus("#other");
    await d.page.keyboard.type("99");
    await d.keys("Delete", "Control+z", "ArrowDown");
    expect(await d.value(3, 5)).toBe(12);
    expect(await d.at()).toMatchObject({ row: 3, column: 5 });
    await d.select(3, 5);
    await d.keys("Control+Shift+F6");
    expect(await d.page.evaluate(() => document.activeElement?.id)).toBe("before");
  });

  it("goes to the address that is written above the sheet, and says when there is none", async () => {
    await d.page.fill(".tg-address", "Materials!B3");
    await d.keys("Enter");
    expect(await d.at()).toMatchObject({ sheet: "Materials", row: 2, column: 1 });
    await d.page.fill(".tg-address", "nowhere");
    await d.page.focus(".tg-address");
    await d.keys("Enter");
    expect(await d.news()).toMatch(/“nowhere” is no cell/);
  });
});

describe("typing and editing", () => {
  it("replaces by typing, edits by F2, gives up by Escape, clears by Delete", async () => {
    await d.select(3, 2);
    const before = await d.value(3, 2);
    await d.page.keyboard.type("new");
    await d.keys("Escape");
    expect(await d.value(3, 2)).toBe(before);
    await d.keys("F2");
    await d.page.keyboard.type(" II");
    await d.keys("ArrowLeft", "ArrowLeft");
    await d.page.keyboard.type("-");
    await d.keys("Enter");
    expect(await d.value(3, 2)).toBe(`${before} -II`);
    await d.select(3, 2);
    await d.keys("Delete");
    expect(await d.value(3, 2)).toBeNull();
  });

  it("keeps what is being typed when the focus goes elsewhere", async () => {
    await d.select(3, 9);
    await d.page.keyboard.type("3/8");
    await d.page.focus("#other");
    expect(await d.value(3, 9)).toBe("3/8");
  });

  it("keeps line breaks of a cell through F2 and makes one by Alt+Enter", async () => {
    await d.select(3, 2);
    await d.page.keyboard.type("one");
    await d.keys("Alt+Enter");
    await d.page.keyboard.type("two");
    await d.keys("Enter");
    expect(await d.value(3, 2)).toBe("one\ntwo");
    await d.select(3, 2);
    await d.keys("F2");
    await d.page.keyboard.type("!");
    await d.keys("Tab");
    expect(await d.value(3, 2)).toBe("one\ntwo!");
  });

  it("takes the text of an input method, the first character included", async () => {
    await d.select(3, 2);
    await d.open.session.send("Input.imeSetComposition", { text: "か", selectionStart: 1, selectionEnd: 1 });
    await d.open.session.send("Input.imeSetComposition", { text: "かな", selectionStart: 2, selectionEnd: 2 });
    await d.open.session.send("Input.insertText", { text: "仮名" });
    await d.keys("Enter");
    expect(await d.value(3, 2)).toBe("仮名");
  });

  it("reads a decimal comma where the browser's language has one, and shows it", async () => {
    await d.start("rows=40&locale=de-DE");
    await d.select(3, 10);
    await d.page.keyboard.type("0,785");
    await d.keys("Tab");
    await d.page.keyboard.type("12.5");
    await d.keys("Enter");
    expect(await d.row(3, 10, 2)).toEqual([0.785, 12.5]);
    expect(await d.page.textContent('.tg-row[data-row="3"] [data-column="10"]')).toBe("0,785");
  });

  it("never guesses at a comma: it stays text and the line says so", async () => {
    await d.select(3, 22);
    await d.page.keyboard.type("1,234");
    await d.keys("Enter");
    expect(await d.value(3, 22)).toBe("1,234");
    expect(await d.news()).toMatch(/“1,234” stays text/);
  });

  it("fills a formula's reference by a click on a cell", async () => {
    await d.select(3, 70);
    await d.page.keyboard.type("=");
    await d.page.locator('.tg-row[data-row="3"] [data-column="69"]').click();
    await d.page.keyboard.type("*2");
    await d.keys("Enter");
    expect(await d.page.evaluate(() => (globalThis as any).tablefeedDesk.formulaAt(3, 70))).toBe("BR4*2");
  });
});

describe("one step of undo for each thing done", () => {
  it("takes back a typed cell with the verdict that followed from it", async () => {
    await d.select(1, 5);
    const before = await d.row(1, 0, 8);
    await d.page.keyboard.type("9");
    await d.keys("Enter");
    expect(await d.value(1, 5)).toBe(9);
    expect(await d.value(1, 0)).not.toBe(before[0]);
    await d.keys("Control+z");
    expect(await d.row(1, 0, 8)).toEqual(before);
    await d.keys("Control+y");
    expect(await d.value(1, 5)).toBe(9);
    expect(await d.page.evaluate(() => (globalThis as any).tablefeedDesk.unsaved())).toBe(true);
    await d.keys("Control+z");
    expect(await d.page.evaluate(() => (globalThis as any).tablefeedDesk.unsaved())).toBe(false);
  });

  it("takes back a paste, a cleared block and a fill, each whole", async () => {
    await d.select(3, 9);
    const before = await Promise.all([3, 4, 5].map((row) => d.row(row, 9, 3)));
    await d.paste("M6\t5\t6\nM8\t6.8\t8");
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

describe("small things that keep numbers right", () => {
  it("shows the sign from the first digit on in a cell that shows per cent", async () => {
    await d.page.evaluate(() =>
      (globalThis as any).tablefeedDesk.model.apply(
        [{ kind: "cell", sheet: "Plan", row: 3, column: 29, value: 0.5, numberFormat: "0%" }],
        { by: "person" },
      ),
    );
    await d.select(3, 29);
    await d.page.keyboard.type("12");
    expect(await d.page.inputValue(".tg-entry")).toBe("12%");
    await d.keys("Enter", "ArrowUp");
    expect(await d.value(3, 29)).toBe(0.12);
    await d.page.keyboard.type("7%");
    await d.keys("Enter");
    expect(await d.value(3, 29)).toBe(0.07);
  });

  it("shows what an undo took back, wherever it is", async () => {
    await d.select(3, 5);
    await d.page.keyboard.type("8");
    await d.keys("Enter", "Control+PageDown", "Control+z");
    expect(await d.at()).toMatchObject({ sheet: "Plan", row: 3, column: 5 });
  });

  it("offers the table's choices in the row that it grew by", async () => {
    await d.page.evaluate(() => {
      const { model } = (globalThis as any).tablefeedDesk;
      for (const one of model.sheet("Plan").choices) one.areas[0].bottom = 40;
    });
    await d.select(41, 2);
    await d.page.keyboard.type("new");
    await d.keys("Tab", "Alt+ArrowDown");
    expect(await d.page.locator("[role=option]").first().textContent()).toBe("drill");
  });
});

describe("sheets", () => {
  it("adds one, names it by F2 on its tab, and comes back from it by undo", async () => {
    await d.page.getByRole("button", { name: "Add a sheet" }).click();
    expect(await d.at()).toMatchObject({ sheet: "Sheet 4" });
    await d.page.getByRole("tab", { name: "Sheet 4" }).focus();
    await d.keys("F2");
    await d.page.keyboard.type("Plan");
    await d.keys("Enter");
    expect(await d.news()).toBe("A sheet named “Plan” exists already.");
    await d.page.getByRole("tab", { name: "Sheet 4" }).dblclick();
    await d.page.keyboard.type("Notes");
    await d.keys("Enter");
    expect(await d.at()).toMatchObject({ sheet: "Notes" });
    await d.page.keyboard.type("remember");
    await d.keys("Enter");
    expect(await d.value(0, 0, "Notes")).toBe("remember");
    await d.keys("Control+z", "Control+z", "Control+z");
    expect((await d.at()).sheet).not.toMatch(/Notes|Sheet 4/);
    expect(await d.page.getByRole("tab").allTextContents()).toEqual(["Plan", "Materials", "Tools"]);
    await d.page.keyboard.type("5");
    await d.keys("Enter");
  });
});
