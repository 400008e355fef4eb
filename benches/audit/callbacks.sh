#!/usr/bin/env bash
# The callback query in the shell, with no sum checked: callbacks.sh TOOL FOLDER...
set -euo pipefail
tool=$1
shift
wanted='"event":(\{"opened"|"closed")'
export LC_ALL=C

# Equipment, opened, closed of each call in time; then those closed whose next is opened within thirty days. The next is the first
# that is opened once it is closed: one that overlaps it is not.
followed='
function seconds(time) { return mktime(substr(time, 1, 4) " " substr(time, 6, 2) " " substr(time, 9, 2) " " substr(time, 12, 2) " " substr(time, 15, 2) " " substr(time, 18, 2)) }
{ opened = seconds($2) }
$1 != before { delete waiting }
{
  for (closed in waiting)
    if (opened >= closed + 0) {
      callbacks += opened - closed <= 30 * 86400 ? waiting[closed] : 0
      delete waiting[closed]
    }
}
{ before = $1 }
$3 != "" { waiting[seconds($3)]++; of++ }
END { print callbacks + 0, of + 0 }'

case $tool in
grep)
  find "$@" -name '*.jsonl' -print0 | xargs -0 grep -HE "$wanted" |
    awk -F '"' '
      { time = $0; sub(/.*"time":"/, "", time); sub(/".*/, "", time); file = substr($0, 1, index($0, ":") - 1) }
      /"event":\{"opened"/ { at = $0; sub(/.*"equipment":"/, "", at); sub(/".*/, "", at); equipment[file] = at; opened[file] = time; next }
      { closed[file] = time }
      END { for (file in opened) print equipment[file] "\t" opened[file] "\t" closed[file] }' |
    sort | TZ=UTC awk -F '\t' "$followed"
  ;;
ripgrep)
  find "$@" -name '*.jsonl' -print0 | xargs -0 cat | rg "$wanted" | "$PYTHON" "$(dirname "$0")/callbacks.py" stream
  ;;
jq)
  find "$@" -name '*.jsonl' -print0 | xargs -0 cat |
    jq -r 'if .seq == 0 then "o\t\(.event.opened.equipment)\t\(.time)" elif .event == "closed" then "c\t\(.time)" else empty end' |
    awk -F '\t' '
      $1 == "o" { if (equipment != "") print equipment "\t" opened "\t" closed; equipment = $2; opened = $3; closed = ""; next }
      { closed = $2 }
      END { print equipment "\t" opened "\t" closed }' |
    sort | TZ=UTC awk -F '\t' "$followed"
  ;;
esac
