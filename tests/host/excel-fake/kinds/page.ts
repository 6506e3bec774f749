/** Page layout, protection and panes of a worksheet. */
import { isIndex } from "../cells.ts";
import { AREA, bad, FakeError, type FakeSheet, type Kind } from "../types.ts";

export const PAGE: Record<string, Kind> = {
  pageLayout: {
    name: "PageLayout",
    props: {
      zoom: {
        set(s: FakeSheet, value) {
          if (Object.keys(value).some((key) => !/^(?:scale|horizontalFitToPages|verticalFitToPages)$/.test(key)))
            throw bad("zoom");
          s.page.across = value.horizontalFitToPages;
        },
      },
    },
    methods: {
      setPrintArea: {
        do(s: FakeSheet, f, [range]) {
          if (f.printerless) throw new FakeError("GeneralException", "no printer");
          s.page.area = range[AREA]();
        },
      },
      setPrintTitleRows: {
        check: ([rows]) => typeof rows === "string" && /^\$?\d+:\$?\d+$/.test(rows),
        do(s: FakeSheet, _f, [rows]) {
          s.page.titleRows = rows;
        },
      },
    },
  },
  protection: { name: "WorksheetProtection", props: { protected: { get: (s: FakeSheet) => s.protected } } },
  freezePanes: {
    name: "WorksheetFreezePanes",
    methods: {
      freezeRows: {
        check: ([n]) => isIndex(n),
        do(s, _f, [n]) {
          s.frozen = n;
        },
      },
    },
  },
};
