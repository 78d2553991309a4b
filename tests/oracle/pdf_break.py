"""Breaks copies of a sound PDF on purpose, so that the checks can show that they see it.

    python pdf_break.py SOUND.pdf FOLDER      writes FOLDER/<check>-<fault>.pdf
"""

import pathlib
import sys

import pikepdf
from pikepdf import Name


def elements(pdf, kind):
    """Elements of one structure type, in the order of the tree."""

    def below(element):
        if element.get("/S") == Name("/" + kind):
            yield element
        found = element.get("/K", pikepdf.Array())
        for kid in found if isinstance(found, pikepdf.Array) else [found]:
            if isinstance(kid, pikepdf.Dictionary) and "/S" in kid:
                yield from below(kid)

    return below(pdf.Root.StructTreeRoot)


def content(pdf, change):
    page = pdf.pages[0]
    page.Contents.write(change(page.Contents.read_bytes()))


def shift_parent_tree(pdf):
    entries = pdf.Root.StructTreeRoot.ParentTree.Nums[1]
    entries[0], entries[1] = entries[1], entries[0]


def lose_kid(pdf):
    del next(elements(pdf, "P")).K[0]


def use_mark_twice(pdf):
    paragraph = next(elements(pdf, "P"))
    paragraph.K.append(paragraph.K[0])


def differ_in_title(pdf):
    pdf.docinfo["/Title"] = "Another title"


def add_main_heading(pdf):
    heading = next(elements(pdf, "H2"))
    heading.S = Name.H1
    content(pdf, lambda text: text.replace(b"/H2", b"/H1"))


def lose_box(pdf):
    del next(elements(pdf, "Figure")).A["/BBox"]


def add_link(pdf):
    area = pikepdf.Dictionary(Type=Name.Annot, Subtype=Name.Link, Rect=[10, 10, 90, 30])
    pdf.pages[0].Annots = pdf.make_indirect(pikepdf.Array([pdf.make_indirect(area)]))


def attach_file(pdf):
    pdf.attachments["prices.txt"] = b"a file"


def miscount_colours(pdf):
    pdf.Root.OutputIntents[0].DestOutputProfile.N = 4


def empty_header_cell(pdf):
    cell = next(elements(pdf, "TH"))
    del cell["/K"]


def paint_outside(pdf):
    content(pdf, lambda text: text + b"\n10 10 m 20 20 l S")


def end_twice(pdf):
    content(pdf, lambda text: text + b"\nEMC")


def lose_language(pdf):
    del pdf.Root["/Lang"]


def lose_intent(pdf):
    del pdf.Root["/OutputIntents"]


MARKS = [
    shift_parent_tree,
    lose_kid,
    use_mark_twice,
    differ_in_title,
    add_main_heading,
    lose_box,
    add_link,
    attach_file,
    miscount_colours,
    empty_header_cell,
    paint_outside,
    end_twice,
]
# By the standard that must refuse it.
STANDARDS = [("ua1", lose_language), ("3a", lose_intent)]


def main(sound, folder):
    for check, fault in [("marks", fault) for fault in MARKS] + STANDARDS:
        with pikepdf.open(sound) as pdf:
            fault(pdf)
            pdf.save(pathlib.Path(folder) / f"{check}-{fault.__name__}.pdf")


if __name__ == "__main__":
    main(*sys.argv[1:])
