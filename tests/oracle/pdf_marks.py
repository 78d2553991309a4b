"""Checks the marking of PDFs where validators look away; read with pikepdf, not with our reader.

    python pdf_marks.py FILE.pdf...      exit 1 when any file has a fault

Every mark belongs to exactly one element, the element lists it, the parent tree leads back,
tag and structure type agree; marks balance and nothing is painted outside them; figures have
a box, header cells have words; there is one main heading, nothing to press and no other file
inside; the two places where a file names itself agree; the colour profile is a real one.
"""

import sys

import pikepdf
from pikepdf import Name

PAINTING = set("S s f F f* B B* b b* Tj TJ ' \" Do sh".split())


def faults(pdf):
    """Yields one sentence for each fault."""
    tree = pdf.Root.get("/StructTreeRoot")
    if tree is None:
        yield "there is no structure tree"
        return
    parents = parent_tree(tree)
    pages = {page.objgen: number for number, page in enumerate(pdf.pages, 1)}
    marks = {}
    for number, page in enumerate(pdf.pages, 1):
        marks[number] = {}
        yield from page_faults(page, number, marks[number])
    walk = Walk(pdf, pages, marks, parents)
    for kid in kids(tree):
        yield from walk.element(kid, tree)
    yield from walk.leftovers()
    yield from self_description(pdf)


def page_faults(page, number, marks):
    """Balance of one page; fills `marks` with the tag and the words of every number."""
    where = f"page {number}"
    stack, saved, shows = [], 0, {}
    for operands, operator in pikepdf.parse_content_stream(page):
        operator = str(operator)
        if operator in ("BDC", "BMC"):
            mcid = operands[1].get("/MCID") if operator == "BDC" else None
            stack.append(mcid)
            if mcid is not None:
                if mcid in marks:
                    yield f"{where}: mark {mcid} begins twice"
                marks[mcid] = str(operands[0])
            elif str(operands[0]) != "/Artifact":
                yield f"{where}: {operands[0]} has no number"
        elif operator == "EMC":
            if not stack:
                yield f"{where}: an end without a beginning"
            else:
                stack.pop()
        elif operator == "q":
            saved += 1
        elif operator == "Q":
            saved -= 1
        elif operator in PAINTING:
            if not stack:
                yield f"{where}: {operator} paints outside marks"
            else:
                shows[stack[-1]] = True
        if len(stack) > 1:
            yield f"{where}: a mark inside a mark"
    if stack:
        yield f"{where}: {len(stack)} marks are left open"
    if saved:
        yield f"{where}: graphics states do not balance"
    for mcid in marks:
        if mcid not in shows:
            yield f"{where}: mark {mcid} shows nothing"
    if sorted(marks) != list(range(len(marks))):
        yield f"{where}: marks are not numbered from 0"


class Walk:
    def __init__(self, pdf, pages, marks, parents):
        self.pdf, self.pages, self.marks, self.parents = pdf, pages, marks, parents
        self.owned, self.headings = {}, 0

    def element(self, element, parent):
        kind = str(element.get("/S"))
        here = f"{kind} {element.objgen[0]}"
        if element.get("/P") is None or element.P.objgen != parent.objgen:
            yield f"{here}: its parent is another one"
        if kind == "/H1":
            self.headings += 1
            if self.headings > 1:
                yield f"{here}: a second main heading"
        yield from self.attributes(element, kind, here)
        for kid in kids(element):
            yield from self.kid(kid, element, kind, here)

    def kid(self, kid, element, kind, here):
        if isinstance(kid, int):
            yield from self.mark(element.get("/Pg"), kid, element, kind, here)
        elif kid.get("/Type") == Name.MCR:
            yield from self.mark(kid.get("/Pg", element.get("/Pg")), int(kid.MCID), element, kind, here)
        else:
            yield from self.element(kid, element)

    def mark(self, page, mcid, element, kind, here):
        if page is None or page.objgen not in self.pages:
            yield f"{here}: mark {mcid} is on no page"
            return
        number = self.pages[page.objgen]
        tag = self.marks[number].get(mcid)
        if tag is None:
            yield f"{here}: page {number} has no mark {mcid}"
        elif tag != kind:
            yield f"{here}: mark {mcid} of page {number} is tagged {tag}"
        if (number, mcid) in self.owned:
            yield f"{here}: mark {mcid} of page {number} belongs to {self.owned[number, mcid]} too"
        self.owned[number, mcid] = here
        entries = self.parents.get(int(page.get("/StructParents", -1)))
        back = entries[mcid] if entries is not None and mcid < len(entries) else None
        if back is None or back.objgen != element.objgen:
            yield f"{here}: the parent tree leads mark {mcid} of page {number} elsewhere"

    def attributes(self, element, kind, here):
        attributes = element.get("/A", pikepdf.Dictionary())
        if kind == "/Figure":
            if not str(element.get("/Alt", "")).strip():
                yield f"{here}: nothing is said for those who cannot see it"
            if "/BBox" not in attributes:
                yield f"{here}: no box"
        if kind == "/TH":
            if attributes.get("/Scope") not in (Name.Row, Name.Column, Name.Both):
                yield f"{here}: no scope"
            if not list(kids(element)):
                yield f"{here}: an empty header cell"
        if kind == "/L" and "/ListNumbering" not in attributes:
            yield f"{here}: no kind of numbering"

    def leftovers(self):
        for number, marks in self.marks.items():
            for mcid in marks:
                if (number, mcid) not in self.owned:
                    yield f"page {number}: no element lists mark {mcid}"
        for number, page in enumerate(self.pdf.pages, 1):
            if len(page.get("/Annots", [])) > 0:
                yield f"page {number}: an area to press, which no element reads out"


def self_description(pdf):
    info, metadata = pdf.docinfo, pdf.open_metadata()
    pairs = [("/Title", "dc:title"), ("/Subject", "dc:description"), ("/Creator", "xmp:CreatorTool"), ("/Producer", "pdf:Producer")]
    for old, new in pairs:
        if str(info.get(old, "")) != (metadata.get(new) or ""):
            yield f"{old} and {new} differ"
    if [str(info.get("/Author", ""))] != list(metadata.get("dc:creator") or [""]):
        yield "/Author and dc:creator differ"
    for old, new in [("/CreationDate", "xmp:CreateDate"), ("/ModDate", "xmp:ModifyDate")]:
        digits = ["".join(filter(str.isdigit, text)) for text in (str(info.get(old, "")), metadata.get(new) or "")]
        if digits[0] != digits[1]:
            yield f"{old} and {new} differ"
    for intent in pdf.Root.get("/OutputIntents", []):
        profile = intent.DestOutputProfile
        if (profile.read_bytes()[16:20], int(profile.N)) != (b"RGB ", 3):
            yield "the colour profile is not RGB with three colours"
    if "/AF" in pdf.Root or "/EmbeddedFiles" in pdf.Root.get("/Names", {}):
        yield "another file is attached"


def parent_tree(tree):
    """Key to array of elements of a page; ours is one flat leaf."""
    numbers = list(tree.get("/ParentTree", pikepdf.Dictionary(Nums=[])).Nums)
    return {int(key): entry for key, entry in zip(numbers[::2], numbers[1::2])}


def kids(element):
    found = element.get("/K", pikepdf.Array())
    return found if isinstance(found, pikepdf.Array) else [found]


def main(paths):
    status = 0
    for path in paths:
        with pikepdf.open(path) as pdf:
            found = list(faults(pdf))
        print("FAIL" if found else "PASS", "marks", path)
        for fault in found:
            print("   ", fault)
        status = status or int(bool(found))
    return status


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
