"""Runs the SQL of an export in DuckDB: with_duckdb.py EXPORT JSON."""

import sys

import duckdb

from compare import report

out, own = sys.argv[1:]
database = duckdb.connect()
for table in ["calls", "readings", "not_taken", "put_backs", "stays", "noted"]:
    database.execute(f"CREATE VIEW {table} AS SELECT * FROM read_parquet('{out}/{table}/*/*.parquet')")
with open(f"{out}/audit.sql") as file:
    database.execute(file.read())


def query(view):
    rows = database.execute(f"SELECT * FROM {view}")
    names = [column[0] for column in rows.description]
    return [dict(zip(names, row)) for row in rows.fetchall()]


report(query, own)
