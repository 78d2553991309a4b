#!/usr/bin/env bash
# Takes one demo job from quote to final invoice, in a folder of its own, so that every kind of
# paper a customer gets lies there to be checked.
#
#   tests/oracle/papers.sh FLATWORK FOLDER
#
# Prints the papers' paths. Exit status: 0, or that of the command that failed.
set -euo pipefail
flatwork=$1
room=$2
here=$(cd "$(dirname "$0")/../.." && pwd)
cp -r "$here/demo-quotes" "$here/price-books" "$room"
home=$room/demo-quotes
# The papers of the law and of an index are off in the demo.
sed -i 's/^  deposit cap: 33%/  deposit cap: 33%\n  right to cancel: yes/' "$home/business.yaml"
echo 'escalation: {index: the ready-mix price the county posts, reference: 190.00, over: 5%}' >>"$home/business.yaml"
cat >"$home/values.yaml" <<'YAML'
lines:
  - Base and forms: {value: 5210.00, done: 100%}
  - The pour: {value: 5000.00, done: 50%, stored: 400.00}
  - Finish and hand-over: {value: 2000.00, done: 0%}
retainage: 5%
held back: [Corner to be mended: 151.00]
YAML
cat >"$home/shed.yaml" <<'YAML'
change: A walk to the shed
because: You asked for it while we set the forms.
days: 1
add: {slabs: {walk: 20 ft x 3 ft}}
lines: [Downspout moved: 91.00]
YAML
run() { "$flatwork" "$@" --in "$home" >/dev/null; }
"$flatwork" quote "$home/carport-and-walk.yaml" --issue --on 2026-05-04 >/dev/null
run accept 2026-0001 --on 2026-05-12
run invoice 2026-0001 --progress "$home/values.yaml" --on 2026-06-20
run credit 2026-0001 1 51.00 --because 'A chipped corner' --on 2026-06-22
run pay 2026-0001 8283.00 --how check --on 2026-06-25
run refund 2026-0001 101.00 --how check --on 2026-06-26
run change 2026-0001 "$home/shed.yaml" --on 2026-06-27
run accept 2026-0001 --change 1 --on 2026-06-27
run invoice 2026-0001 --final --poured 2026-06-19 --on 2026-07-01
run verify
printf '%s\n' "$home"/records/*.pdf
