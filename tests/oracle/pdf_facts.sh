#!/usr/bin/env bash
# What poppler and qpdf say of a quote: sound, small, fonts embedded as subsets, tagged, with a
# title and a language, and its text holds the customer's name and the total.
#
#   tests/oracle/pdf_facts.sh FILE.pdf NAME TOTAL
set -euo pipefail
file=$1 name=$2 total=$3 status=0
expect() {
    if ! "${@:2}"; then
        echo "$file: $1" >&2
        status=1
    fi
}
info=$(pdfinfo "$file")
text=$(pdftotext -layout "$file" -)
expect 'qpdf finds it unsound' qpdf --check "$file" >/dev/null
# Two lines of heading, then one a font; emb, sub and uni are the 5th to 3rd from the end.
expect 'a font is not an embedded subset with its letters' awk '
    NR > 2 { fonts++; if ($(NF-4) != "yes" || $(NF-3) != "yes" || $(NF-2) != "yes") bad = 1 }
    END { exit bad || !fonts }' <(pdffonts "$file")
expect 'not tagged' grep -Eq '^Tagged: +yes' <<<"$info"
expect 'no title' grep -Eq '^Title: +[^ ]' <<<"$info"
expect 'no language' grep -aq '/Lang' <(qpdf --qdf --object-streams=disable "$file" -)
expect "the text lacks $name" grep -qF "$name" <<<"$text"
expect "the text lacks $total" grep -qF "$total" <<<"$text"
expect 'over 80 KB' test "$(wc -c <"$file")" -lt 80000
exit $status
