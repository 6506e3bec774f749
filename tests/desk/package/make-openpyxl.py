"""Makes files/openpyxl.xlsx with everything that openpyxl 3.0 (MIT) can write. Run: python3 make-openpyxl.py"""
import datetime
import io
import pathlib

from openpyxl import Workbook
from openpyxl.chart import BarChart, LineChart, Reference
from openpyxl.comments import Comment
from openpyxl.drawing.image import Image
from openpyxl.formatting.rule import CellIsRule, ColorScaleRule, FormulaRule
from openpyxl.styles import Alignment, Border, Font, PatternFill, Protection, Side
from openpyxl.workbook.defined_name import DefinedName
from openpyxl.worksheet.datavalidation import DataValidation
from openpyxl.worksheet.pagebreak import Break
from openpyxl.worksheet.table import Table, TableStyleInfo
from PIL import Image as Picture

book = Workbook()
book.iso_dates = True
plan = book.active
plan.title = "Plan & shop"
plan.append(["Op", "Feature", "Dia", "Depth", "Qty", "Cost", "When"])
rows = [
    ["slot", "keyway", 10, 4.5, 2],
    ["drill", "M8 hole", 6.8, 20, 4],
    ["face", "top", 50, 1, 1],
    ["bore", "seat", 24, 12, 1],
]
for i, row in enumerate(rows, start=2):
    plan.append(row)
    plan.cell(i, 6, f"=C{i}*D{i}*E{i}")
    plan.cell(i, 7, datetime.datetime(2026, 3, i, 13, 30))
    plan.cell(i, 3).number_format = "0.000"
    plan.cell(i, 6).number_format = '#,##0.00 "Eur"'
plan["B7"] = "below the table"
plan["C7"] = "=SUM(Jobs[Dia])"
plan["D7"] = "=SUM(D2:D5)"
plan["L3"] = True
plan["L4"] = "=1/0"
plan["L5"] = "  two  spaces\nand a line"
plan["L6"] = datetime.date(2026, 12, 31)
jobs = Table(displayName="Jobs", ref="A1:G5")
jobs.tableStyleInfo = TableStyleInfo(name="TableStyleMedium2", showRowStripes=True)
plan.add_table(jobs)
plan.freeze_panes = "C2"
plan.column_dimensions["B"].width = 24
plan.column_dimensions["H"].hidden = True
plan.row_dimensions[7].height = 30
for cell in plan[1]:
    cell.font = Font(bold=True, name="Georgia", color="FF8A1410")
    cell.fill = PatternFill("solid", fgColor="FFFBEAC2")
    cell.border = Border(bottom=Side(style="medium"))
    cell.alignment = Alignment(wrap_text=True, horizontal="center")
plan.merge_cells("N2:O3")
plan["N2"] = "merged"
plan["N2"].protection = Protection(locked=False)
choice = DataValidation(type="list", formula1='"slot,drill,face,bore"', allow_blank=True)
choice.add("A2:A1048576")
plan.add_data_validation(choice)
number = DataValidation(type="decimal", operator="between", formula1="0", formula2="500")
number.add("C2:D100")
plan.add_data_validation(number)
plan.conditional_formatting.add("F2:F100", CellIsRule(operator="greaterThan", formula=["$D$7"], fill=PatternFill(bgColor="FFF8D7D4")))
plan.conditional_formatting.add("A1:A1048576", FormulaRule(formula=['$A1="slot"'], font=Font(italic=True)))
plan.conditional_formatting.add("D2:D5", ColorScaleRule(start_type="min", start_color="FFFFFF", end_type="max", end_color="FF0000"))
plan["B2"].comment = Comment("ask the customer", "the shop")
plan["B7"].comment = Comment("a note below", "the shop")
plan["P2"].hyperlink = "https://example.org/drawing"
plan["P2"].value = "drawing"
plan["P3"].hyperlink = "#Lists!A3"
plan["P3"].value = "a list"
plan.print_title_rows = "1:1"
plan.print_area = "A1:G20"
plan.page_setup.orientation = "landscape"
plan.page_setup.fitToWidth = 1
plan.sheet_properties.pageSetUpPr.fitToPage = True
plan.oddHeader.center.text = "Plan &P"
plan.row_breaks.append(Break(id=6))

chart = BarChart()
chart.add_data(Reference(plan, min_col=3, min_row=1, max_row=5), titles_from_data=True)
chart.set_categories(Reference(plan, min_col=2, min_row=2, max_row=5))
plan.add_chart(chart, "B10")
line = LineChart()
line.add_data(Reference(plan, min_col=4, min_row=1, max_row=5), titles_from_data=True)
plan.add_chart(line, "J12")
dot = io.BytesIO()
Picture.new("RGB", (8, 8), (20, 83, 45)).save(dot, "PNG")
plan.add_image(Image(dot), "Q10")

lists = book.create_sheet("Lists")
for i, word in enumerate(["Material", "1.0503", "1.4301", "EN AW-6082"], start=1):
    lists.cell(i, 1, word)
lists["C1"] = "='Plan & shop'!C3+'Plan & shop'!$C$4"
lists["C2"] = "=SUM('Plan & shop'!C2:C5)"
lists["E1"] = "='Plan & shop'!C2:C4*2"
lists.formula_attributes["E1"] = {"t": "array", "ref": "E1:E3"}
lists.auto_filter.ref = "A1:A4"
lists.protection.sheet = True
second = DataValidation(type="list", formula1="Lists!$A$2:$A$4")
second.add("I2:I100")
plan.add_data_validation(second)
hidden = book.create_sheet("Hidden")
hidden["A1"] = 42
hidden.sheet_state = "veryHidden"
chartsheet = book.create_chartsheet("Chart only")
only = BarChart()
only.add_data(Reference(plan, min_col=3, min_row=1, max_row=5), titles_from_data=True)
chartsheet.add_chart(only)
book.defined_names.append(DefinedName("dias", attr_text="'Plan & shop'!$C$2:$C$5"))
book.defined_names.append(DefinedName("rate", attr_text="1.21"))
book.properties.title = "A plan"
book.save(pathlib.Path(__file__).parent / "files" / "openpyxl.xlsx")
