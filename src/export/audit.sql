-- The audit of service calls, as views over the exported tables.
--
-- An audit finds causes. It does not assign liability. A number points at sessions to be read, not at a person.
--
-- Register the tables by their folders first. For DuckDB, started in the folder of the export:
--   CREATE VIEW calls AS SELECT * FROM read_parquet('calls/*/*.parquet')
--   CREATE VIEW readings AS SELECT * FROM read_parquet('readings/*/*.parquet')
-- For Spark SQL:
--   CREATE TEMPORARY VIEW calls USING parquet OPTIONS (path 'calls')
--   CREATE TEMPORARY VIEW readings USING parquet OPTIONS (path 'readings')
-- Then run this file, and read the views, such as SELECT * FROM audit_summary.
-- Each statement ends with a semicolon, and no other semicolon stands here.

-- The window for callbacks, in days of 24 h. Change it here and run the file again.
CREATE OR REPLACE TEMPORARY VIEW audit_parameters AS
SELECT
    CAST(30 AS BIGINT) AS window_days,
    CAST(86400000000000 AS BIGINT) AS day_ns,
    CAST(3600000000000 AS BIGINT) AS same_visit_ns,
    CAST(28800000000000 AS BIGINT) AS work_ns,
    CAST(-9223372036854775807 AS BIGINT) AS earliest_ns,
    CAST(9223372036854775807 AS BIGINT) AS latest_ns,
    CAST(20 AS BIGINT) AS small,
    1.959963984540054E0 AS z;

-- The next call at the equipment of each closed call: opened at or after its closing. A walk that only proves work is none.
CREATE OR REPLACE TEMPORARY VIEW audit_next AS
SELECT first_session, second_session, second_opened_ns
FROM (
    SELECT
        one.session AS first_session,
        other.session AS second_session,
        other.opened_ns AS second_opened_ns,
        ROW_NUMBER() OVER (PARTITION BY one.session ORDER BY other.opened_ns, other.session) AS place
    FROM calls one
    JOIN calls other
        ON other.equipment = one.equipment
        AND other.opened_ns >= one.closed_ns
        AND (other.opened_ns > one.opened_ns OR (other.opened_ns = one.opened_ns AND other.session > one.session))
        AND NOT other.proof
) later
WHERE place = 1;

-- Which of the visits of its technician, who is named, each call belongs to. It is that of the call before where it was opened within an
-- hour of when that was left, or within eight where it walks the tree by which work is proven, or where the two overlap and were opened
-- within a day.
CREATE OR REPLACE TEMPORARY VIEW audit_visits AS
SELECT
    session,
    most_ns,
    SUM(begins) OVER (
        PARTITION BY equipment, technician ORDER BY opened_ns, session ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW
    ) AS visit
FROM (
    SELECT
        session,
        equipment,
        technician,
        opened_ns,
        most_ns,
        CASE
            WHEN opened_ns >= before_left_ns AND opened_ns - before_left_ns <= most_ns THEN 0
            WHEN opened_ns < before_left_ns AND opened_ns - before_opened_ns <= day_ns THEN 0
            ELSE 1
        END AS begins
    FROM (
        SELECT
            call.session,
            call.equipment,
            call.technician,
            call.opened_ns,
            given.day_ns,
            CASE WHEN call.after_work THEN given.work_ns ELSE given.same_visit_ns END AS most_ns,
            LAG(call.opened_ns) OVER (PARTITION BY call.equipment, call.technician ORDER BY call.opened_ns, call.session)
                AS before_opened_ns,
            LAG(COALESCE(call.closed_ns, call.last_ns)) OVER (
                PARTITION BY call.equipment, call.technician ORDER BY call.opened_ns, call.session
            ) AS before_left_ns
        FROM calls call
        CROSS JOIN audit_parameters given
        WHERE call.equipment IS NOT NULL AND call.technician IS NOT NULL
    ) told
) began;

-- The next such call that was not on the same visit.
CREATE OR REPLACE TEMPORARY VIEW audit_next_visit AS
SELECT one.session AS first_session, MIN(other.opened_ns) AS opened_ns
FROM calls one
JOIN calls other
    ON other.equipment = one.equipment
    AND other.opened_ns >= one.closed_ns
    AND (other.opened_ns > one.opened_ns OR (other.opened_ns = one.opened_ns AND other.session > one.session))
    AND NOT other.proof
LEFT JOIN audit_visits first_visit ON first_visit.session = one.session
LEFT JOIN audit_visits second_visit ON second_visit.session = other.session
WHERE one.technician IS NULL OR other.technician IS NULL OR one.technician <> other.technician
    OR (first_visit.visit <> second_visit.visit AND other.opened_ns - one.closed_ns > second_visit.most_ns)
GROUP BY one.session;

-- The end of the archive: the last record of the calls whose clocks are believed. One that went back in a call is not. Where all did, it is
-- the last opening, or the closing of that call where it is dated before it.
CREATE OR REPLACE TEMPORARY VIEW audit_end AS
SELECT
    COALESCE(
        MAX(CASE WHEN NOT clock_went_back AND last_ns <= latest_ns THEN last_ns END),
        MAX(CASE WHEN clock_went_back AND closed_ns < opened_ns THEN closed_ns WHEN clock_went_back THEN opened_ns END)
    ) AS until_ns
FROM calls CROSS JOIN audit_parameters;

-- How long each closed call with an equipment was followed, and what came. By a clock that is doubted nobody knows how long: below 0.
CREATE OR REPLACE TEMPORARY VIEW audit_followed AS
SELECT
    session,
    next_session,
    CASE
        WHEN came_back = 1 THEN second_opened_ns - closed_ns
        WHEN closed_ns < earliest_ns THEN -1
        WHEN second_opened_ns <= until_ns THEN second_opened_ns - closed_ns
        ELSE until_ns - closed_ns
    END AS wait_ns,
    CASE WHEN came_back = 1 OR (closed_ns >= earliest_ns AND second_opened_ns <= until_ns) THEN 1 ELSE 0 END AS came,
    came_back,
    came_again,
    CASE WHEN closed_ns >= earliest_ns AND until_ns - closed_ns >= window_ns THEN 1 ELSE 0 END AS settled
FROM (
    SELECT
        call.session,
        call.closed_ns,
        later.second_session AS next_session,
        later.second_opened_ns,
        archive.until_ns,
        given.earliest_ns,
        given.window_days * given.day_ns AS window_ns,
        CASE WHEN visit.opened_ns - call.closed_ns <= given.window_days * given.day_ns THEN 1 ELSE 0 END AS came_again,
        CASE WHEN later.second_opened_ns - call.closed_ns <= given.window_days * given.day_ns THEN 1 ELSE 0 END AS came_back
    FROM calls call
    CROSS JOIN audit_end archive
    CROSS JOIN audit_parameters given
    LEFT JOIN audit_next later ON later.first_session = call.session
    LEFT JOIN audit_next_visit visit ON visit.first_session = call.session
    WHERE call.closed_ns IS NOT NULL AND call.equipment IS NOT NULL AND NOT call.proof
) ends;

-- The calls that came back, each with the one that followed.
CREATE OR REPLACE TEMPORARY VIEW audit_callback_pairs AS
SELECT
    one.session AS first_session,
    other.session AS second_session,
    one.equipment,
    one.technician,
    other.technician AS second_technician,
    CAST(followed.wait_ns AS DOUBLE) / CAST(given.day_ns AS DOUBLE) AS days,
    CASE WHEN one.tree = other.tree THEN 1 ELSE 0 END AS same_complaint,
    CASE
        WHEN one.technician = other.technician
            AND (first_visit.visit = second_visit.visit OR followed.wait_ns <= second_visit.most_ns) THEN 1
        ELSE 0
    END AS same_visit,
    one.fault,
    one.outcome,
    other.fault AS then_fault,
    other.outcome AS then_outcome,
    one.ending AS first_ending,
    other.ending AS second_ending,
    one.part AS condemned,
    other.part AS then_part,
    other.remedy AS then_remedy
FROM audit_followed followed
JOIN calls one ON one.session = followed.session
JOIN calls other ON other.session = followed.next_session
LEFT JOIN audit_visits first_visit ON first_visit.session = one.session
LEFT JOIN audit_visits second_visit ON second_visit.session = other.session
CROSS JOIN audit_parameters given
WHERE followed.came_back = 1;

-- A part was condemned, and the call that came back ended in a fault with another remedy.
CREATE OR REPLACE TEMPORARY VIEW audit_suspected_misdiagnoses AS
SELECT
    first_session,
    second_session,
    equipment,
    technician,
    condemned,
    CASE WHEN first_ending = 'insisted' THEN 1 ELSE 0 END AS insisted,
    then_fault,
    then_remedy AS remedy,
    then_part AS part,
    days,
    same_visit
FROM audit_callback_pairs
WHERE condemned IS NOT NULL
    AND second_ending IN ('verdict', 'insisted')
    AND (then_remedy IN ('correct', 'shut_down', 'refer') OR (then_remedy = 'replace' AND then_part <> condemned));

-- What each call adds to the counts.
CREATE OR REPLACE TEMPORARY VIEW audit_marks AS
SELECT
    call.session,
    call.technician,
    call.tree,
    call.part,
    call.closed_month,
    call.fault,
    call.equipment,
    call.ending,
    call.with_library,
    CASE WHEN call.closed_ns IS NULL THEN 0 ELSE 1 END AS closed,
    CASE WHEN followed.session IS NULL THEN 0 ELSE 1 END AS followed,
    COALESCE(followed.came_back, 0) AS came_back,
    COALESCE(followed.settled, 0) AS settled,
    COALESCE(followed.came_again, 0) AS came_again,
    CASE WHEN followed.settled = 1 AND followed.came_again = 1 THEN 1 ELSE 0 END AS settled_callback,
    CASE WHEN followed.settled = 1 AND followed.came_again = 0 THEN 1 ELSE 0 END AS held,
    CASE WHEN pair.same_complaint = 1 THEN 1 ELSE 0 END AS same_complaint,
    CASE WHEN pair.same_visit = 1 THEN 1 ELSE 0 END AS same_visit,
    CASE WHEN suspected.first_session IS NULL THEN 0 ELSE 1 END AS suspected,
    CASE WHEN call.ending = 'unproven' THEN 1 ELSE 0 END AS unproven,
    CASE WHEN call.ending = 'insisted' THEN 1 ELSE 0 END AS insisted,
    CASE WHEN call.left_open THEN 1 ELSE 0 END AS left_open,
    CASE WHEN call.proof AND call.closed_ns IS NOT NULL AND call.equipment IS NOT NULL THEN 1 ELSE 0 END AS proof
FROM calls call
LEFT JOIN audit_followed followed ON followed.session = call.session
LEFT JOIN audit_callback_pairs pair ON pair.first_session = call.session
LEFT JOIN audit_suspected_misdiagnoses suspected ON suspected.first_session = call.session;

-- The same counts of everything, by technician, by tree, by condemned part and by the month of closing.
CREATE OR REPLACE TEMPORARY VIEW audit_counts AS
SELECT
    grouping_by,
    name,
    COUNT(*) AS calls,
    SUM(closed) AS closed,
    SUM(followed) AS followed,
    SUM(came_back) AS callbacks,
    SUM(same_complaint) AS same_complaint,
    SUM(same_visit) AS same_visit,
    SUM(settled) AS settled,
    SUM(settled_callback) AS settled_callbacks,
    SUM(suspected) AS suspected_misdiagnoses,
    SUM(unproven) AS unproven,
    SUM(insisted) AS insisted,
    SUM(left_open) AS left_open
FROM (
    SELECT 'technician' AS grouping_by, technician AS name, closed, followed, came_back, same_complaint, same_visit, settled, settled_callback,
        suspected, unproven, insisted, left_open
    FROM audit_marks
    UNION ALL
    SELECT 'tree' AS grouping_by, tree AS name, closed, followed, came_back, same_complaint, same_visit, settled, settled_callback,
        suspected, unproven, insisted, left_open
    FROM audit_marks
    UNION ALL
    SELECT 'part' AS grouping_by, part AS name, closed, followed, came_back, same_complaint, same_visit, settled, settled_callback,
        suspected, unproven, insisted, left_open
    FROM audit_marks
    WHERE part IS NOT NULL
    UNION ALL
    SELECT 'month' AS grouping_by, closed_month AS name, closed, followed, came_back, same_complaint, same_visit, settled, settled_callback,
        suspected, unproven, insisted, left_open
    FROM audit_marks
    WHERE closed_month IS NOT NULL
    UNION ALL
    SELECT 'everything' AS grouping_by, 'everything' AS name, closed, followed, came_back, same_complaint, same_visit, settled, settled_callback,
        suspected, unproven, insisted, left_open
    FROM audit_marks
) marks
GROUP BY grouping_by, name;

-- The counts with their rate of callbacks, and Wilson's interval of 95 %.
-- Of no calls nothing is known, and the interval is 0 to 1.
CREATE OR REPLACE TEMPORARY VIEW audit_rates AS
SELECT
    grouping_by,
    name,
    calls,
    closed,
    followed,
    callbacks,
    CASE WHEN followed = 0 THEN 0E0 ELSE share END AS rate,
    CASE WHEN callbacks = 0 THEN 0E0 ELSE (middle - half) / whole END AS low,
    CASE WHEN callbacks = followed THEN 1E0 ELSE (middle + half) / whole END AS high,
    same_complaint,
    same_visit,
    settled,
    settled_callbacks,
    CASE WHEN settled = 0 THEN 0E0 ELSE settled_share END AS settled_rate,
    CASE WHEN settled_callbacks = 0 THEN 0E0 ELSE (settled_middle - settled_half) / settled_whole END AS settled_low,
    CASE WHEN settled_callbacks = settled THEN 1E0 ELSE (settled_middle + settled_half) / settled_whole END AS settled_high,
    CASE WHEN settled < small THEN 1 ELSE 0 END AS settled_too_small,
    suspected_misdiagnoses,
    unproven,
    insisted,
    left_open,
    CASE WHEN followed < small THEN 1 ELSE 0 END AS too_small
FROM (
    SELECT
        shares.*,
        share + z * z / (2E0 * n) AS middle,
        z * SQRT(share * (1E0 - share) / n + z * z / (4E0 * n * n)) AS half,
        1E0 + z * z / n AS whole,
        settled_share + z * z / (2E0 * m) AS settled_middle,
        z * SQRT(settled_share * (1E0 - settled_share) / m + z * z / (4E0 * m * m)) AS settled_half,
        1E0 + z * z / m AS settled_whole
    FROM (
        SELECT
            counts.*,
            given.z,
            given.small,
            CAST(NULLIF(counts.followed, 0) AS DOUBLE) AS n,
            CAST(counts.callbacks AS DOUBLE) / CAST(NULLIF(counts.followed, 0) AS DOUBLE) AS share,
            CAST(NULLIF(counts.settled, 0) AS DOUBLE) AS m,
            CAST(counts.settled_callbacks AS DOUBLE) / CAST(NULLIF(counts.settled, 0) AS DOUBLE) AS settled_share
        FROM audit_counts counts
        CROSS JOIN audit_parameters given
    ) shares
) parts;

CREATE OR REPLACE TEMPORARY VIEW audit_by_technician AS
SELECT name AS technician, calls, closed, followed, callbacks, rate, low, high, suspected_misdiagnoses, unproven, insisted, left_open, too_small,
    same_visit, settled, settled_callbacks, settled_rate, settled_low, settled_high, settled_too_small
FROM audit_rates
WHERE grouping_by = 'technician';

CREATE OR REPLACE TEMPORARY VIEW audit_by_tree AS
SELECT name AS tree, calls, closed, followed, callbacks, rate, low, high, suspected_misdiagnoses, unproven, insisted, left_open, too_small,
    same_visit, settled, settled_callbacks, settled_rate, settled_low, settled_high, settled_too_small
FROM audit_rates
WHERE grouping_by = 'tree';

CREATE OR REPLACE TEMPORARY VIEW audit_by_part AS
SELECT name AS part, calls - insisted AS proven, calls, closed, followed, callbacks, rate, low, high, suspected_misdiagnoses, unproven, insisted, left_open, too_small,
    same_visit, settled, settled_callbacks, settled_rate, settled_low, settled_high, settled_too_small
FROM audit_rates
WHERE grouping_by = 'part';

CREATE OR REPLACE TEMPORARY VIEW audit_by_month AS
SELECT name AS closed_month, closed, followed, callbacks, rate, low, high, too_small,
    settled, settled_callbacks, settled_rate, settled_low, settled_high, settled_too_small
FROM audit_rates
WHERE grouping_by = 'month';

-- The share of calls still not called back, step by step, by Kaplan and Meier. Closed after the end of the archive or before its
-- beginning, by a clock that is doubted, a call was not followed at all.
CREATE OR REPLACE TEMPORARY VIEW audit_survival AS
SELECT
    wait_ns,
    came,
    at_risk,
    CASE
        WHEN MIN(at_risk - came) OVER (ORDER BY wait_ns ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW) = 0 THEN 0E0
        ELSE EXP(SUM(LN(CAST(CASE WHEN at_risk = came THEN 1 ELSE at_risk - came END AS DOUBLE) / CAST(at_risk AS DOUBLE)))
            OVER (ORDER BY wait_ns ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW))
    END AS still,
    SUM(CAST(came AS DOUBLE) / (CAST(at_risk AS DOUBLE) * CAST(NULLIF(at_risk - came, 0) AS DOUBLE)))
        OVER (ORDER BY wait_ns ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW) AS greenwood
FROM (
    SELECT
        wait_ns,
        came,
        SUM(watched) OVER (ORDER BY wait_ns DESC ROWS BETWEEN UNBOUNDED PRECEDING AND CURRENT ROW) AS at_risk
    FROM (
        SELECT wait_ns, SUM(came) AS came, COUNT(*) AS watched
        FROM (SELECT CASE WHEN wait_ns < 0 THEN 0 ELSE wait_ns END AS wait_ns, came FROM audit_followed) followed
        GROUP BY wait_ns
    ) waits
) risks
WHERE came > 0;

-- The days by which the share that is back is estimated: those of the summary.
CREATE OR REPLACE TEMPORARY VIEW audit_horizons AS
SELECT '30 days' AS horizon, 30 * day_ns AS by_ns FROM audit_parameters
UNION ALL
SELECT 'window' AS horizon, window_days * day_ns AS by_ns FROM audit_parameters;

-- What is known of each: how many calls were still watched, and the last steps of the curve, at all and before nobody was left.
CREATE OR REPLACE TEMPORARY VIEW audit_horizon_steps AS
SELECT
    horizons.horizon,
    watched.watched,
    MIN(curve.still) AS still,
    MIN(CASE WHEN curve.still > 0E0 THEN curve.still END) AS last_still,
    MAX(CASE WHEN curve.still > 0E0 THEN curve.greenwood END) AS last_greenwood
FROM audit_horizons horizons
JOIN (
    SELECT horizon, COALESCE(SUM(CASE WHEN wait_ns >= by_ns THEN 1 ELSE 0 END), 0) AS watched
    FROM audit_horizons LEFT JOIN audit_followed ON 1 = 1
    GROUP BY horizon
) watched ON watched.horizon = horizons.horizon
LEFT JOIN audit_survival curve ON curve.wait_ns <= horizons.by_ns
GROUP BY horizons.horizon, watched.watched;

-- Kaplan and Meier's share that is back by then, with its interval of 95 % by Greenwood's variance on the scale of ln(-ln S). Where
-- nobody was watched for so long, it is not known: the share is that of the last day that is, and there is no interval.
CREATE OR REPLACE TEMPORARY VIEW audit_expected AS
SELECT
    horizon,
    1E0 - COALESCE(still, 1E0) AS share,
    known,
    CASE
        WHEN known = 0 THEN NULL
        WHEN still IS NULL THEN 0E0
        WHEN still <= 0E0 AND last_still IS NULL THEN 0E0
        ELSE 1E0 - POWER(last_still, EXP(-off))
    END AS low,
    CASE
        WHEN known = 0 THEN NULL
        WHEN still IS NULL THEN most
        WHEN still <= 0E0 THEN 1E0
        ELSE 1E0 - POWER(last_still, EXP(off))
    END AS high
FROM (
    SELECT
        steps.horizon,
        steps.still,
        steps.last_still,
        CASE WHEN steps.watched > 0 OR steps.still <= 0E0 THEN 1 ELSE 0 END AS known,
        given.z * SQRT(steps.last_greenwood) / ABS(LN(steps.last_still)) AS off,
        given.z * given.z / (CAST(steps.watched AS DOUBLE) + given.z * given.z) AS most
    FROM audit_horizon_steps steps
    CROSS JOIN audit_parameters given
) offs;

-- How often each fault was proven, how often that held for the whole window, and how often it came back on another visit.
CREATE OR REPLACE TEMPORARY VIEW audit_learned AS
SELECT fault, COUNT(*) AS proven, SUM(held) AS held, SUM(came_again) AS came_back
FROM audit_marks
WHERE followed = 1 AND fault IS NOT NULL AND ending IN ('verdict', 'outcome')
GROUP BY fault;

-- Readings so close to a bound that another meter could have led elsewhere, in calls with a verdict.
CREATE OR REPLACE TEMPORARY VIEW audit_borderline AS
SELECT call.session, call.technician, call.equipment, call.fault, taken.place, taken.reading, taken.value, taken.unit, taken.margin
FROM readings taken
JOIN calls call ON call.session = taken.session
WHERE taken.borderline AND NOT taken.superseded AND call.fault IS NOT NULL;

-- The whole audit in one row.
CREATE OR REPLACE TEMPORARY VIEW audit_summary AS
SELECT
    given.window_days,
    totals.calls,
    totals.closed,
    totals.without_library,
    totals.without_equipment,
    COALESCE(rates.callbacks, 0) AS callbacks,
    COALESCE(rates.followed, 0) AS followed,
    COALESCE(rates.rate, 0E0) AS rate,
    COALESCE(rates.low, 0E0) AS low,
    COALESCE(rates.high, 1E0) AS high,
    thirty.share AS at_30_days,
    thirty.low AS at_30_days_low,
    thirty.high AS at_30_days_high,
    thirty.known AS at_30_days_known,
    CASE WHEN whole.known = 1 THEN whole.share END AS at_window,
    whole.low AS at_window_low,
    whole.high AS at_window_high,
    longest.followed_days,
    COALESCE(rates.same_complaint, 0) AS same_complaint,
    COALESCE(rates.same_visit, 0) AS same_visit,
    back.returns,
    totals.proofs,
    COALESCE(rates.settled, 0) AS settled,
    COALESCE(rates.settled_callbacks, 0) AS settled_callbacks,
    COALESCE(rates.settled_rate, 0E0) AS settled_rate,
    COALESCE(rates.settled_low, 0E0) AS settled_low,
    COALESCE(rates.settled_high, 1E0) AS settled_high,
    COALESCE(rates.settled_too_small, 1) AS settled_too_small,
    totals.suspected_misdiagnoses,
    totals.unproven,
    totals.insisted,
    totals.left_open,
    totals.condemned_proven,
    totals.condemned_insisted
FROM (
    SELECT
        COUNT(*) AS calls,
        COALESCE(SUM(closed), 0) AS closed,
        COALESCE(SUM(CASE WHEN with_library THEN 0 ELSE 1 END), 0) AS without_library,
        COALESCE(SUM(CASE WHEN equipment IS NULL THEN 1 ELSE 0 END), 0) AS without_equipment,
        COALESCE(SUM(suspected), 0) AS suspected_misdiagnoses,
        COALESCE(SUM(unproven), 0) AS unproven,
        COALESCE(SUM(insisted), 0) AS insisted,
        COALESCE(SUM(left_open), 0) AS left_open,
        COALESCE(SUM(proof), 0) AS proofs,
        COALESCE(SUM(CASE WHEN part IS NOT NULL AND insisted = 0 THEN 1 ELSE 0 END), 0) AS condemned_proven,
        COALESCE(SUM(CASE WHEN part IS NOT NULL AND insisted = 1 THEN 1 ELSE 0 END), 0) AS condemned_insisted
    FROM audit_marks
) totals
CROSS JOIN audit_parameters given
CROSS JOIN (SELECT COUNT(DISTINCT second_session) AS returns FROM audit_callback_pairs) back
CROSS JOIN (
    SELECT MAX(CAST(CASE WHEN wait_ns < 0 THEN 0 ELSE wait_ns END AS DOUBLE) / CAST(day_ns AS DOUBLE)) AS followed_days
    FROM audit_followed CROSS JOIN audit_parameters
) longest
JOIN audit_expected thirty ON thirty.horizon = '30 days'
JOIN audit_expected whole ON whole.horizon = 'window'
LEFT JOIN audit_rates rates ON rates.grouping_by = 'everything';
