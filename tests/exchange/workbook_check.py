"""Reads a workbook without the library that wrote it and works its formulas out anew.

Usage: workbook_check.py FILE. Prints `sheet<TAB>cell<TAB>value` for each cell, then `formulas<TAB>n`.
Fails when a value that is stored beside a formula is not what the formula gives. Knows the formulas
that the program writes: SUM, SUMIF, COUNTIF, ROUND(a*b,2) and a*b.
"""

import decimal
import re
import sys
import xml.etree.ElementTree as tree
import zipfile

MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"
LINK = "{http://schemas.openxmlformats.org/officeDocument/2006/relationships}"


def sheets(book):
    targets = {
        link.get("Id"): link.get("Target")
        for link in tree.fromstring(book.read("xl/_rels/workbook.xml.rels"))
    }
    for sheet in tree.fromstring(book.read("xl/workbook.xml")).iter(MAIN + "sheet"):
        yield sheet.get("name"), "xl/" + targets[sheet.get(LINK + "id")]


def cells(book, part, strings):
    found = {}
    for cell in tree.fromstring(book.read(part)).iter(MAIN + "c"):
        value = cell.find(MAIN + "v")
        formula = cell.find(MAIN + "f")
        text = value.text if value is not None else ""
        if cell.get("t") == "s":
            text = strings[int(text)]
        found[cell.get("r")] = (
            text if cell.get("t") == "s" else float(text),
            formula.text if formula is not None else None,
        )
    return found


def span(table, reference):
    column, first, last = re.fullmatch(r"([A-Z]+)(\d+):[A-Z]+(\d+)", reference).groups()
    return [table.get(column + str(row), ("", None))[0] for row in range(int(first), int(last) + 1)]


def worth(formula, name, all_sheets):
    """The value of a formula on this sheet."""

    def values(reference):
        sheet = name
        if "!" in reference:
            sheet, reference = reference.rsplit("!", 1)
            sheet = sheet.strip("'")
        return span(all_sheets[sheet], reference)

    def number(reference):
        return all_sheets[name][reference][0]

    if match := re.fullmatch(r"SUM\(([^,]+)\)", formula):
        return sum(v for v in values(match[1]) if not isinstance(v, str))
    if match := re.fullmatch(r'SUMIF\(([^,]+),"([^"]*)",([^,]+)\)', formula):
        pairs = zip(values(match[1]), values(match[3]))
        return sum(v for key, v in pairs if key == match[2] and not isinstance(v, str))
    if match := re.fullmatch(r'COUNTIF\(([^,]+),"([^"]*)"\)', formula):
        return sum(1 for key in values(match[1]) if key == match[2])
    if match := re.fullmatch(r"ROUND\(([A-Z]+\d+)\*([A-Z]+\d+),2\)", formula):
        exact = decimal.Decimal(repr(number(match[1]))) * decimal.Decimal(repr(number(match[2])))
        return float(exact.quantize(decimal.Decimal("0.01"), decimal.ROUND_HALF_UP))
    if match := re.fullmatch(r"([A-Z]+\d+)\*([A-Z]+\d+)", formula):
        return number(match[1]) * number(match[2])
    raise SystemExit(f"{name}: the formula {formula} is not known here")


def main():
    book = zipfile.ZipFile(sys.argv[1])
    shared = tree.fromstring(book.read("xl/sharedStrings.xml"))
    strings = ["".join(t.text or "" for t in si.iter(MAIN + "t")) for si in shared]
    all_sheets = {name: cells(book, part, strings) for name, part in sheets(book)}
    formulas = 0
    for name, table in all_sheets.items():
        for reference, (value, formula) in table.items():
            print(f"{name}\t{reference}\t{value}")
            if formula is None:
                continue
            formulas += 1
            anew = worth(formula, name, all_sheets)
            if abs(anew - value) > 0.0051:
                raise SystemExit(f"{name}!{reference}: {formula} is {anew}, stored is {value}")
    print(f"formulas\t{formulas}")


main()
