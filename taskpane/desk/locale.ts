/** English texts of the embedded spreadsheet. */
import type { ILanguagePack } from "@univerjs/core";
import { mergeLocales } from "@univerjs/core";
import design from "@univerjs/design/locale/en-US";
import docs from "@univerjs/docs-ui/locale/en-US";
import find from "@univerjs/find-replace/locale/en-US";
import sheets from "@univerjs/sheets/locale/en-US";
import conditional from "@univerjs/sheets-conditional-formatting-ui/locale/en-US";
import validation from "@univerjs/sheets-data-validation-ui/locale/en-US";
import filter from "@univerjs/sheets-filter-ui/locale/en-US";
import sheetsFind from "@univerjs/sheets-find-replace/locale/en-US";
import formula from "@univerjs/sheets-formula/locale/en-US";
import formulaUi from "@univerjs/sheets-formula-ui/locale/en-US";
import numbers from "@univerjs/sheets-numfmt-ui/locale/en-US";
import sheetsUi from "@univerjs/sheets-ui/locale/en-US";
import ui from "@univerjs/ui/locale/en-US";

export const ENGLISH: ILanguagePack = mergeLocales(
  design,
  docs,
  find,
  sheets,
  conditional,
  validation,
  filter,
  sheetsFind,
  formula,
  formulaUi,
  numbers,
  sheetsUi,
  ui,
);
