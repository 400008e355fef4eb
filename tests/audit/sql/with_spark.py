"""Runs the SQL of an export on Spark, with two workers in processes of their own: with_spark.py EXPORT JSON."""

import os
import sys

import pyspark
from pyspark.sql import SparkSession

from compare import report, statements

out, own = sys.argv[1:]
os.environ.setdefault("SPARK_HOME", os.path.dirname(pyspark.__file__))
spark = (
    SparkSession.builder.master("local-cluster[2,1,512]")
    .config("spark.executor.memory", "512m")
    .config("spark.sql.shuffle.partitions", "2")
    .config("spark.ui.enabled", "false")
    .config("spark.driver.bindAddress", "127.0.0.1")
    .config("spark.driver.host", "127.0.0.1")
    .getOrCreate()
)
for table in ["calls", "readings", "not_taken", "put_backs", "stays", "noted"]:
    spark.sql(f"CREATE TEMPORARY VIEW {table} USING parquet OPTIONS (path '{out}/{table}')")
for statement in statements(out):
    spark.sql(statement)
# Every view asked for below is made of these: without it, each is worked out from the files again.
for view in ["audit_followed", "audit_callback_pairs", "audit_marks", "audit_rates", "audit_survival"]:
    spark.catalog.cacheTable(view)

report(lambda view: [row.asDict() for row in spark.table(view).collect()], own)
print(f"Spark {spark.version}, {spark.sparkContext.master}")
spark.stop()
