-- Views of a store of Seamtakt in SQLite, for the session that reads this file: the store isn't changed.
--   sqlite3 -readonly records.sqlite -cmd ".read store-views.sqlite.sql" \
--     "SELECT unit_serial, seam, heat_input_kJ_mm FROM passes WHERE NOT is_void"
-- What a view shows was signed, but a view proves nothing: seamtakt ledger verify does.

-- a logged pass, as it was recorded; corrections stand beside it
CREATE TEMP VIEW passes AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.ingest') AS ingest,
  json_extract(r.body, '$.results.unit_serial') AS unit_serial,
  json_extract(r.body, '$.results.weldment') AS weldment,
  json_extract(r.body, '$.results.seam') AS seam,
  json_extract(r.body, '$.results.pass') AS pass,
  json_extract(r.body, '$.results.schedule') AS schedule,
  json_extract(r.body, '$.results.schedule_revision') AS schedule_revision,
  json_extract(r.body, '$.results.robot') AS robot,
  json_extract(r.body, '$.results.samples') AS samples,
  json_extract(r.body, '$.results.duration_s') AS duration_s,
  json_extract(r.body, '$.results.arc_time_s') AS arc_time_s,
  json_extract(r.body, '$.results.arc_starts') AS arc_starts,
  json_extract(r.body, '$.results.length_mm') AS length_mm,
  json_extract(r.body, '$.results.length_source') AS length_source,
  json_extract(r.body, '$.results.overlap_mm') AS overlap_mm,
  json_extract(r.body, '$.results.product_power_W') AS product_power_W,
  json_extract(r.body, '$.results.mean_current_A') AS mean_current_A,
  json_extract(r.body, '$.results.mean_voltage_V') AS mean_voltage_V,
  json_extract(r.body, '$.results.lead_resistance_mOhm') AS lead_resistance_mOhm,
  json_extract(r.body, '$.results.mean_power_W') AS mean_power_W,
  json_extract(r.body, '$.results.energy_J') AS energy_J,
  json_extract(r.body, '$.results.waveform_factor') AS waveform_factor,
  json_extract(r.body, '$.results.travel_speed_mm_s') AS travel_speed_mm_s,
  json_extract(r.body, '$.results.logged_travel_speed_mm_s') AS logged_travel_speed_mm_s,
  json_extract(r.body, '$.results.wire_feed_speed_m_min') AS wire_feed_speed_m_min,
  json_extract(r.body, '$.results.wire_counter_m_min') AS wire_counter_m_min,
  json_extract(r.body, '$.results.gas_flow_l_min') AS gas_flow_l_min,
  json_extract(r.body, '$.results.interpass_C') AS interpass_C,
  json_extract(r.body, '$.results.arc_energy_kJ_mm') AS arc_energy_kJ_mm,
  json_extract(r.body, '$.results.heat_input_kJ_mm') AS heat_input_kJ_mm,
  json_extract(r.body, '$.results.U_heat_input_kJ_mm') AS U_heat_input_kJ_mm,
  json_extract(r.body, '$.results.thermal_efficiency') AS thermal_efficiency,
  json_extract(r.body, '$.results.u_voltage_pct') AS u_voltage_pct,
  json_extract(r.body, '$.results.u_current_pct') AS u_current_pct,
  json_extract(r.body, '$.results.u_travel_speed_pct') AS u_travel_speed_pct,
  json_extract(r.body, '$.results.u_waveform_factor_pct') AS u_waveform_factor_pct,
  json_extract(r.body, '$.results.cooling_time_s') AS cooling_time_s,
  json_extract(r.body, '$.results.cooling_from_C') AS cooling_from_C,
  json_extract(r.body, '$.results.cooling_from_source') AS cooling_from_source,
  json_extract(r.body, '$.results.haz_hardness_HV') AS haz_hardness_HV,
  json_extract(r.body, '$.results.min_current_A') AS min_current_A,
  json_extract(r.body, '$.results.max_current_A') AS max_current_A,
  json_extract(r.body, '$.results.min_voltage_V') AS min_voltage_V,
  json_extract(r.body, '$.results.max_voltage_V') AS max_voltage_V,
  json_extract(r.body, '$.results.rms_current_A') AS rms_current_A,
  json_extract(r.body, '$.results.sd_current_A') AS sd_current_A,
  json_extract(r.body, '$.results.sd_voltage_V') AS sd_voltage_V,
  json_extract(r.body, '$.results.start_stand_s') AS start_stand_s,
  json_extract(r.body, '$.results.end_stand_s') AS end_stand_s,
  json_extract(r.body, '$.results.frozen_s') AS frozen_s,
  json_extract(r.body, '$.results.steady') AS steady,
  json_extract(r.body, '$.results.excursions') AS excursions,
  json_extract(r.body, '$.results.excursion_count') AS excursion_count,
  json_extract(r.body, '$.results.verdict') AS verdict,
  json_extract(r.body, '$.results.failed_by') AS failed_by,
  json_extract(r.body, '$.results.undecided_by') AS undecided_by,
  json_extract(r.body, '$.results.coverage') AS coverage,
  json_extract(r.body, '$.results.source') AS source,
  json_extract(r.body, '$.results.source_line_first') AS source_line_first,
  json_extract(r.body, '$.results.source_line_last') AS source_line_last,
  json_extract(r.body, '$.results.started') AS started,
  json_extract(r.body, '$.results.energy_method') AS energy_method,
  json_extract(r.body, '$.results.power_method') AS power_method,
  json_extract(r.body, '$.results.interruptions') AS interruptions,
  json_extract(r.body, '$.results.interruption_count') AS interruption_count,
  json_extract(r.body, '$.results.carried') AS carried,
  json_extract(r.body, '$.results.steady.time_s') AS steady_time_s,
  json_extract(r.body, '$.results.steady.current_A') AS steady_current_A,
  json_extract(r.body, '$.results.steady.voltage_V') AS steady_voltage_V,
  json_extract(r.body, '$.results.steady.power_W') AS steady_power_W,
  json_extract(r.body, '$.results.steady.wire_feed_speed_m_min') AS steady_wire_feed_speed_m_min,
  json_extract(r.body, '$.results.steady.travel_speed_mm_s') AS steady_travel_speed_mm_s,
  json_extract(r.body, '$.results.steady.gas_flow_l_min') AS steady_gas_flow_l_min,
  json_extract(r.body, '$.instruments') AS instruments,
  json_extract(r.body, '$.findings') AS findings
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('pass')) r;

-- a manual seam, as it was recorded
CREATE TEMP VIEW manual_seams AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.ingest') AS ingest,
  json_extract(r.body, '$.results.unit_serial') AS unit_serial,
  json_extract(r.body, '$.results.weldment') AS weldment,
  json_extract(r.body, '$.results.seam') AS seam,
  json_extract(r.body, '$.results.pass') AS pass,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.results.welder')) AS welder_name,
  json_extract(r.body, '$.results.welder') AS welder,
  json_extract(r.body, '$.results.schedule') AS schedule,
  json_extract(r.body, '$.results.date') AS date,
  json_extract(r.body, '$.results.result') AS result,
  json_extract(r.body, '$.results.failed_by') AS failed_by,
  json_extract(r.body, '$.results.undecided_by') AS undecided_by,
  json_extract(r.body, '$.findings') AS findings
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('manual')) r;

-- one reading of logs
CREATE TEMP VIEW ingests AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.passes') AS passes,
  json_extract(r.body, '$.results.manual') AS manual_seams,
  json_extract(r.body, '$.results.rows.read') AS rows_read,
  json_extract(r.body, '$.results.rows.in_passes') AS rows_in_passes,
  json_extract(r.body, '$.results.rows.arc_off') AS rows_arc_off,
  json_extract(r.body, '$.results.rows.rejected') AS rows_rejected,
  json_extract(r.body, '$.inputs.plan_file') AS plan_file,
  json_extract(r.body, '$.inputs.plan_sha256') AS plan_sha256,
  json_extract(r.body, '$.raw') AS logs,
  json_extract(r.body, '$.results.units') AS units
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('ingest')) r;

-- a revision of a schedule, in full
CREATE TEMP VIEW schedules AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.schedule.id') AS schedule,
  json_extract(r.body, '$.results.schedule.revision') AS revision,
  json_extract(r.body, '$.results.schedule.status') AS status,
  json_extract(r.body, '$.results.schedule.process') AS process,
  json_extract(r.body, '$.schedule') AS schedule_sha256,
  json_extract(r.body, '$.results') AS content
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('schedule')) r;

-- an instrument's calibration
CREATE TEMP VIEW calibrations AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.instrument') AS instrument,
  json_extract(r.body, '$.results.certificate') AS certificate,
  json_extract(r.body, '$.results.certificate_sha256') AS certificate_sha256,
  json_extract(r.body, '$.results.date') AS calibrated_on,
  json_extract(r.body, '$.results.due') AS due,
  json_extract(r.body, '$.results.as_found') AS as_found
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('calibration')) r;

-- what an old record should have said
CREATE TEMP VIEW corrections AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.changes') AS changes
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('correction')) r;

-- an old record doesn't count
CREATE TEMP VIEW voids AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('void')) r;

-- a person's own signature under a record
CREATE TEMP VIEW signoffs AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.key_id') AS key_id,
  json_extract(r.body, '$.results.leaf') AS leaf,
  json_extract(r.body, '$.results.signature') AS signature
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('signoff')) r;

-- what failed and has to be decided on
CREATE TEMP VIEW nonconformances AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.unit_serial') AS unit_serial,
  json_extract(r.body, '$.results.place') AS place,
  json_extract(r.body, '$.findings') AS findings
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('nonconformance')) r;

-- what becomes of a nonconformance
CREATE TEMP VIEW dispositions AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.decision') AS decision,
  json_extract(r.body, '$.results.unit_serial') AS unit_serial,
  json_extract(r.body, '$.results.schedule') AS schedule,
  json_extract(r.body, '$.results.retest') AS retest,
  json_extract(r.body, '$.results.cause') AS cause
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('disposition')) r;

-- a pass judged again by a later calibration
CREATE TEMP VIEW judgements AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.unit_serial') AS unit_serial,
  json_extract(r.body, '$.results.cause') AS cause,
  json_extract(r.body, '$.results.calibration') AS calibration,
  json_extract(r.body, '$.results.verdict') AS verdict,
  json_extract(r.body, '$.results.undecided_by') AS undecided_by
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('judgement')) r;

-- until when records are kept, and legal holds
CREATE TEMP VIEW retentions AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.action') AS action,
  json_extract(r.body, '$.results.unit_serial') AS unit_serial,
  json_extract(r.body, '$.results.until') AS until
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('retention')) r;

-- a note; its text is why
CREATE TEMP VIEW notes AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('note')) r;

-- an anchor was kept outside, or another store's anchors are kept here
CREATE TEMP VIEW anchors AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.anchor') AS anchor,
  json_extract(r.body, '$.results.kept_in') AS kept_in,
  json_extract(r.body, '$.results.witnessed') AS witnessed
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('anchor')) r;

-- an outside authority's time over a head
CREATE TEMP VIEW timestamps AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.n') AS head_n,
  json_extract(r.body, '$.results.head_sha256') AS head_sha256,
  json_extract(r.body, '$.results.time') AS stamped_at,
  json_extract(r.body, '$.results.authority') AS authority
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('timestamp')) r;

-- a person's own key belongs to a name
CREATE TEMP VIEW person_keys AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.key_id') AS key_id
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('person')) r;

-- the store's next key
CREATE TEMP VIEW store_keys AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.key_id') AS key_id,
  json_extract(r.body, '$.replaces') AS replaces
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('key')) r;

-- a new key in place of a lost one
CREATE TEMP VIEW revoked_keys AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.key_id') AS key_id,
  json_extract(r.body, '$.replaces') AS replaces
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('key_revoke')) r;

-- the store begins
CREATE TEMP VIEW beginnings AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results.key_id') AS key_id
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('genesis')) r;

-- the store continues another one
CREATE TEMP VIEW migrations AS SELECT
  r.seq AS seq,
  json_extract(r.body, '$.t') AS recorded_at,
  (SELECT p.name FROM main.person p WHERE p.sha256 = json_extract(r.body, '$.who')) AS who,
  json_extract(r.body, '$.who') AS who_sha256,
  json_extract(r.body, '$.why') AS why,
  json_extract(r.body, '$.ref') AS about,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM main.lookup l JOIN main.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  json_extract(r.body, '$.results') AS content
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('migrate')) r;

-- a finding of a record
CREATE TEMP VIEW findings AS SELECT
  r.seq AS seq,
  r.kind AS kind,
  e.key AS place_in_list,
  json_extract(e.value, '$.rule') AS rule,
  json_extract(e.value, '$.severity') AS severity,
  json_extract(e.value, '$.where') AS place,
  json_extract(e.value, '$.value') AS value,
  json_extract(e.value, '$.limit') AS limit_value,
  json_extract(e.value, '$.unit') AS unit,
  json_extract(e.value, '$.text') AS text,
  json_extract(e.value, '$.source') AS source
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('pass', 'manual', 'nonconformance')) r, json_each(r.body, '$.findings') e;

-- a member that a correction changed
CREATE TEMP VIEW changes AS SELECT
  r.seq AS seq,
  r.kind AS kind,
  e.key AS place_in_list,
  json_extract(e.value, '$.member') AS member,
  json_extract(e.value, '$.old') AS old_value,
  json_extract(e.value, '$.new') AS new_value
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('correction')) r, json_each(r.body, '$.results.changes') e;

-- the arc was off within a pass
CREATE TEMP VIEW interruptions AS SELECT
  r.seq AS seq,
  r.kind AS kind,
  e.key AS place_in_list,
  json_extract(e.value, '$.start_s') AS start_s,
  json_extract(e.value, '$.duration_s') AS duration_s,
  json_extract(e.value, '$.line') AS line
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('pass')) r, json_each(r.body, '$.results.interruptions') e;

-- a stretch of a pass outside a limit
CREATE TEMP VIEW excursions AS SELECT
  r.seq AS seq,
  r.kind AS kind,
  e.key AS place_in_list,
  json_extract(e.value, '$.quantity') AS quantity,
  json_extract(e.value, '$.start_s') AS start_s,
  json_extract(e.value, '$.end_s') AS end_s,
  json_extract(e.value, '$.length_mm') AS length_mm,
  json_extract(e.value, '$.value') AS value,
  json_extract(e.value, '$.limit') AS limit_value
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('pass')) r, json_each(r.body, '$.results.excursions') e;

-- an instrument that a pass was measured with
CREATE TEMP VIEW instruments AS SELECT
  r.seq AS seq,
  r.kind AS kind,
  e.key AS place_in_list,
  json_extract(e.value, '$.id') AS instrument,
  json_extract(e.value, '$.quantity') AS quantity,
  json_extract(e.value, '$.certificate') AS certificate,
  json_extract(e.value, '$.due') AS due
FROM (SELECT seq, kind, CAST(body AS TEXT) AS body FROM main.rec WHERE kind IN ('pass')) r, json_each(r.body, '$.instruments') e;

PRAGMA query_only = ON;
