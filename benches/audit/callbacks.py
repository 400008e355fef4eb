"""The callback query in DuckDB, with no sum checked: callbacks.py FORM PATH...

FORM is `files` (session files below folders), `lines` (lines that name their session) or `stream` (openings and closings on standard
input, session after session).
"""

import sys

import duckdb

form, *paths = sys.argv[1:]
database = duckdb.connect()
database.execute("SET preserve_insertion_order = false")
# Nothing is detected that can be said, and an event is not parsed before it is known to be needed.
options = "format = 'newline_delimited', records = true, maximum_object_size = 2097152"
if form == "files":
    globs = [f"{path}/**/*.jsonl" for path in paths]
    source = f"SELECT filename AS session, time, event FROM read_json({globs!r}, {options}, filename = true, columns = {{time: 'TIMESTAMP', event: 'JSON'}})"
elif form == "lines":
    globs = [f"{path}/*.jsonl" for path in paths]
    source = f"SELECT session, time, event FROM read_json({globs!r}, {options}, columns = {{session: 'VARCHAR', time: 'TIMESTAMP', event: 'JSON'}})"
else:
    # A session begins where a call is opened, so the order must be kept.
    database.execute("SET preserve_insertion_order = true")
    numbered = f"SELECT row_number() OVER () AS number, time, event FROM read_json('/dev/stdin', {options}, columns = {{time: 'TIMESTAMP', event: 'JSON'}})"
    source = f"SELECT sum((event LIKE '{{\"opened\":%')::INTEGER) OVER (ORDER BY number) AS session, time, event FROM ({numbered})"

print(*database.execute(f"""
WITH told AS ({source}),
calls AS (
    SELECT
        session,
        min(time) FILTER (event LIKE '{{"opened":%') AS opened,
        max(time) FILTER (event LIKE '"closed"%' OR event LIKE 'closed%') AS closed,
        any_value(event ->> '$.opened.equipment') FILTER (event LIKE '{{"opened":%') AS equipment
    FROM told
    WHERE event LIKE '{{"opened":%' OR event LIKE '"closed"%' OR event LIKE 'closed%'
    GROUP BY session
),
followed AS (
    SELECT closed, lead(opened) OVER w AS one, lead(opened, 2) OVER w AS two, lead(opened, 3) OVER w AS three
    FROM calls
    WHERE equipment IS NOT NULL
    WINDOW w AS (PARTITION BY equipment ORDER BY opened)
),
-- The next call is the first that was opened once this one was closed: one that overlaps it is not. No three do here.
nexts AS (
    SELECT closed, CASE WHEN one >= closed THEN one WHEN two >= closed THEN two ELSE three END AS next
    FROM followed
)
SELECT count(*) FILTER (next >= closed AND next - closed <= INTERVAL 30 DAY) AS callbacks, count(closed) AS closed
FROM nexts
""").fetchall()[0])
