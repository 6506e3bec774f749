import { describe, expect, it } from "vitest";
import { readRows } from "../../src/table/read.ts";

const ENGLISH = [
  [
    "Row",
    "Operation",
    "Units",
    "Material",
    "Machine",
    "Finish diameter",
    "Depth",
    "Through",
    "Way",
    "Surface speed",
    "Feed per tooth",
  ],
  [1, "bore", "mm", "Steel C45 (AISI 1045)", "Centre V3", 25.5, 12.5, true, "climb", 120, 0.05],
];

describe("one table in six languages (identity)", () => {
  it.each([
    [
      [
        "Nr.",
        "Bearbeitung",
        "Einheit",
        "Werkstoff",
        "Maschine",
        "Fertig-Ø",
        "Tiefe",
        "Durchgang",
        "Fräsrichtung",
        "vc [m/min]",
        "Vorschub (mm/Zahn)",
      ],
      ["Kreistasche", "Millimeter", "25,5", "12,5 mm", "ja", "Gleichlauf", "0,05"],
    ],
    [
      [
        "N°",
        "Opération",
        "Unités",
        "Matière",
        "Machine",
        "Ø fini",
        "Prof.",
        "Débouchant",
        "Sens de fraisage",
        "Vc (m/min)",
        "Avance (mm/dent)",
      ],
      ["Poche circulaire", "mm", "25,5", "12,5 mm", "oui", "en avalant", "0,05"],
    ],
    [
      [
        "N.º",
        "Operación",
        "Unidades",
        "Material",
        "Máquina",
        "Ø final",
        "Profundidad",
        "Pasante",
        "Sentido de fresado",
        "Velocidad de corte",
        "Avance por diente",
      ],
      ["Cajera circular", "milímetros", "25,5", "12,5", "sí", "concordancia", "0,05 mm/diente"],
    ],
    [
      [
        "Nr.",
        "Lavorazione",
        "Unità",
        "Materiale",
        "Macchina",
        "Ø finito",
        "Profondità",
        "Passante",
        "Senso di fresatura",
        "Vt",
        "Avanzamento al dente",
      ],
      ["Tasca circolare", "mm", "25,5", "12,5", "sì", "concorde", "0,05"],
    ],
    [
      [
        "番号",
        "加工内容",
        "単位",
        "材質",
        "機械",
        "仕上げ径",
        "深さ（mm）",
        "貫通",
        "切削方向",
        "切削速度（m/min）",
        "1刃送り",
      ],
      ["円ポケット", "ｍｍ", "２５．５", "12.5", "○", "ダウンカット", "0.05"],
    ],
  ] as const)("reads %j", (headings, [operation, units, diameter, depth, through, way, feed]) => {
    const line = [1, operation, units, "Steel C45 (AISI 1045)", "Centre V3", diameter, depth, through, way, 120, feed];
    const [wanted] = readRows(ENGLISH);
    const [own] = readRows([headings, line]);
    expect(own!.problems).toEqual([]);
    expect({ ...own!.row, row: undefined }).toEqual({ ...wanted!.row, row: undefined });
    expect(wanted!.row).toMatchObject({ operation: "bore", finishDiameter: 25.5, depth: 12.5, through: true });
  });
});
