/** Answers about headings in a workbook of the desk: through save, moved and hidden columns, undo. */
import { describe, expect, it } from "vitest";
import { createModel, type Model } from "../../taskpane/desk/model/model.ts";
import { newPackage } from "../../taskpane/desk/package/new.ts";
import { openPackage } from "../../taskpane/desk/package/open.ts";
import { savePackage } from "../../taskpane/desk/package/save.ts";
import { siteOf } from "../../taskpane/desk/sites.ts";
import { sheetHost } from "../../taskpane/host/sheet.ts";
import { createSession } from "../../taskpane/work/session.ts";

const book = (): Uint8Array =>
  newPackage([
    {
      name: "Plan",
      rows: [
        ["Operation", "Units", "Ø fertig", "Zeug", "Feed", "Verdict", "Basis"],
        ["bohren", "mm", 8.5, 20, 0.1, null, null],
      ],
    },
  ]);

/** The workbook opened, with a session that has read it. */
async function open(bytes: Uint8Array) {
  const { book, kept } = openPackage(bytes);
  const model = createModel(book);
  const session = createSession(sheetHost(model), () => []);
  await session.refresh();
  const state = () => session.store.get();
  return {
    model,
    session,
    state,
    inputs: () => Object.fromEntries(state().matching!.inputs.map((m) => [m.column.key, m.at])),
    save: () => savePackage(kept, model.edits()),
  };
}
const settled = (model: Model, text: string) => expect.poll(() => model.settings().headings ?? "").toContain(text);

describe("answers in a workbook of the desk", () => {
  it("come back from the saved file, and say the same of the table that is kept fresh", async () => {
    const first = await open(book());
    expect(first.inputs()).toEqual({ operation: 0, units: 1, finishDiameter: 2 });
    first.session.match(3, "in:depth");
    first.session.match(4, "in:feedPerTooth");
    await settled(first.model, "feedPerTooth");
    expect(first.model.unsaved()).toBe(true);
    const again = await open(first.save());
    expect(again.inputs()).toEqual({ operation: 0, units: 1, finishDiameter: 2, depth: 3, feedPerTooth: 4 });
    const { byHand, score, asked } = again.state();
    const site = siteOf(again.model, "Plan", { byHand, score, asked })!;
    expect(site.matching.inputs.map((m) => m.column.key)).toContain("feedPerTooth");
    first.session.destroy();
    again.session.destroy();
  });
  it("hold for hidden columns and for a heading that is typed anew", async () => {
    const { model, session, inputs } = await open(book());
    session.match(3, "in:depth");
    await settled(model, "depth");
    model.apply([{ kind: "hide-columns", sheet: "Plan", columns: [3], hidden: true }], { by: "person" });
    await session.refresh();
    expect(inputs().depth).toBe(3);
    model.apply([{ kind: "cell", sheet: "Plan", row: 0, column: 3, value: "Gerät" }], { by: "person" });
    await session.refresh();
    expect(inputs().depth).toBe(3);
    model.apply([{ kind: "cell", sheet: "Plan", row: 0, column: 3, value: "Thread" }], { by: "person" });
    await session.refresh();
    expect(inputs()).toMatchObject({ thread: 3 });
    expect(inputs().depth).toBeUndefined();
    session.destroy();
  });
  it("are one step of undo each", async () => {
    const { model, session, inputs } = await open(book());
    session.match(3, "in:depth");
    await settled(model, "depth");
    model.undo();
    expect(model.settings()).toEqual({});
    await session.refresh();
    expect(inputs().depth).toBeUndefined();
    model.redo();
    await session.refresh();
    expect(inputs().depth).toBe(3);
    session.destroy();
  });
});
