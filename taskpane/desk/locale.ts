/** English texts of the embedded spreadsheet. */
import type { ILanguagePack } from "@univerjs/core";
import { mergeLocales } from "@univerjs/core";
import dataValidation from "@univerjs/data-validation/locale/en-US";
import design from "@univerjs/design/locale/en-US";
import docs from "@univerjs/docs-ui/locale/en-US";
import find from "@univerjs/find-replace/locale/en-US";
import sheets from "@univerjs/sheets/locale/en-US";
import conditional from "@univerjs/sheets-conditional-formatting-ui/locale/en-US";
import sheetsValidation from "@univerjs/sheets-data-validation/locale/en-US";
import validation from "@univerjs/sheets-data-validation-ui/locale/en-US";
import sheetsFilter from "@univerjs/sheets-filter/locale/en-US";
import filter from "@univerjs/sheets-filter-ui/locale/en-US";
import formula from "@univerjs/sheets-formula/locale/en-US";
import formulaUi from "@univerjs/sheets-formula-ui/locale/en-US";
import numbers from "@univerjs/sheets-numfmt-ui/locale/en-US";
import sheetsUi from "@univerjs/sheets-ui/locale/en-US";
import ui from "@univerjs/ui/locale/en-US";

export const ENGLISH: ILanguagePack = mergeLocales(
  dataValidation,
  design,
  docs,
  find,
  sheets,
  conditional,
  sheetsValidation,
  validation,
  sheetsFilter,
  filter,
  formula,
  formulaUi,
  numbers,
  sheetsUi,
  ui,
);
