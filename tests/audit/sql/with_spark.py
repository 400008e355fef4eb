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

report(lambda view: [row.asDict() for row in spark.table(view).collect()], own)
print(f"Spark {spark.version}, {spark.sparkContext.master}")
spark.stop()
