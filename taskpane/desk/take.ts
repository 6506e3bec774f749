/** The open workbook as plain data, with formulas spelled out cell by cell and spilled values filled in. */
import type { ICellData, IRange, IWorkbookData, Univer, Workbook } from "@univerjs/core";
import { IResourceLoaderService, IUniverInstanceService, UniverInstanceType } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";

export interface Taken {
  readonly data: IWorkbookData;
  /** Where formulas spilled over more than one cell: sheet id → ranges, the formula at the top left. */
  readonly spills: Readonly<Record<string, readonly IRange[]>>;
}

export function takeWorkbook(univer: Univer): Taken {
  const injector = univer.__getInjector();
  const workbook = injector.get(IUniverInstanceService).getCurrentUnitOfType<Workbook>(UniverInstanceType.UNIVER_SHEET);
  if (!workbook) throw new Error("no workbook is open");
  const formulas = injector.get(FormulaDataModel);
  const data = structuredClone(injector.get(IResourceLoaderService).saveUnit<IWorkbookData>(workbook.getUnitId())!);
  const unit = workbook.getUnitId();
  const spills: Record<string, IRange[]> = {};
  for (const [id, sheet] of Object.entries(data.sheets)) {
    const cells = (sheet.cellData ?? {}) as Record<number, Record<number, ICellData | null>>;
    for (const [r, line] of Object.entries(cells)) {
      for (const [c, cell] of Object.entries(line)) {
        if (!cell?.f && !cell?.si) continue;
        const formula = formulas.getFormulaStringByCell(Number(r), Number(c), id, unit);
        if (formula) cell.f = formula;
        cell.si = undefined;
      }
    }
    const extra = formulas.getArrayFormulaCellData()?.[unit]?.[id];
    const ranges = formulas.getArrayFormulaRange()?.[unit]?.[id] as
      | Record<number, Record<number, IRange | null>>
      | undefined;
    for (const line of Object.values(ranges ?? {})) {
      for (const range of Object.values(line ?? {})) {
        if (!range || (range.startRow === range.endRow && range.startColumn === range.endColumn)) continue;
        const anchor = cells[range.startRow]?.[range.startColumn];
        if (!anchor?.f || anchor.v === "#SPILL!") continue;
        spills[id] ??= [];
        spills[id]!.push(range);
        for (let r = range.startRow; r <= range.endRow; r++) {
          for (let c = range.startColumn; c <= range.endColumn; c++) {
            const value = extra?.[r]?.[c] as ICellData | undefined;
            if (!value || value.v === null || value.v === undefined || value.v === "") continue;
            cells[r] ??= {};
            cells[r]![c] = { ...cells[r]![c], v: value.v, t: value.t };
          }
        }
      }
    }
    sheet.cellData = cells as typeof sheet.cellData;
  }
  return { data, spills };
}
