-- Views of a store of Seamtakt in PostgreSQL, for the session that reads this file: the store isn't changed.
--   psql "postgresql://reader@host/plant" -f store-views.postgresql.sql \
--     -c "SELECT unit_serial, seam, heat_input_kJ_mm FROM passes WHERE NOT is_void"
-- The reader needs USAGE on the schema seamtakt, SELECT on its tables, and TEMPORARY on the database.
-- What a view shows was signed, but a view proves nothing: seamtakt ledger verify does.

-- a logged pass, as it was recorded; corrections stand beside it
CREATE TEMP VIEW passes AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{ingest}')::bigint AS ingest,
  (b.body #>> '{results,unit_serial}') AS unit_serial,
  (b.body #>> '{results,weldment}') AS weldment,
  (b.body #>> '{results,seam}') AS seam,
  (b.body #>> '{results,pass}')::bigint AS pass,
  (b.body #>> '{results,schedule}') AS schedule,
  (b.body #>> '{results,schedule_revision}') AS schedule_revision,
  (b.body #>> '{results,robot}') AS robot,
  (b.body #>> '{results,samples}')::bigint AS samples,
  (b.body #>> '{results,duration_s}')::double precision AS duration_s,
  (b.body #>> '{results,arc_time_s}')::double precision AS arc_time_s,
  (b.body #>> '{results,arc_starts}')::bigint AS arc_starts,
  (b.body #>> '{results,length_mm}')::double precision AS length_mm,
  (b.body #>> '{results,length_source}') AS length_source,
  (b.body #>> '{results,overlap_mm}')::double precision AS overlap_mm,
  (b.body #>> '{results,product_power_W}')::double precision AS product_power_W,
  (b.body #>> '{results,mean_current_A}')::double precision AS mean_current_A,
  (b.body #>> '{results,mean_voltage_V}')::double precision AS mean_voltage_V,
  (b.body #>> '{results,lead_resistance_mOhm}')::double precision AS lead_resistance_mOhm,
  (b.body #>> '{results,mean_power_W}')::double precision AS mean_power_W,
  (b.body #>> '{results,energy_J}')::double precision AS energy_J,
  (b.body #>> '{results,waveform_factor}')::double precision AS waveform_factor,
  (b.body #>> '{results,travel_speed_mm_s}')::double precision AS travel_speed_mm_s,
  (b.body #>> '{results,logged_travel_speed_mm_s}')::double precision AS logged_travel_speed_mm_s,
  (b.body #>> '{results,wire_feed_speed_m_min}')::double precision AS wire_feed_speed_m_min,
  (b.body #>> '{results,wire_counter_m_min}')::double precision AS wire_counter_m_min,
  (b.body #>> '{results,gas_flow_l_min}')::double precision AS gas_flow_l_min,
  (b.body #>> '{results,interpass_C}')::double precision AS interpass_C,
  (b.body #>> '{results,arc_energy_kJ_mm}')::double precision AS arc_energy_kJ_mm,
  (b.body #>> '{results,heat_input_kJ_mm}')::double precision AS heat_input_kJ_mm,
  (b.body #>> '{results,U_heat_input_kJ_mm}')::double precision AS U_heat_input_kJ_mm,
  (b.body #>> '{results,thermal_efficiency}')::double precision AS thermal_efficiency,
  (b.body #>> '{results,u_voltage_pct}')::double precision AS u_voltage_pct,
  (b.body #>> '{results,u_current_pct}')::double precision AS u_current_pct,
  (b.body #>> '{results,u_travel_speed_pct}')::double precision AS u_travel_speed_pct,
  (b.body #>> '{results,u_waveform_factor_pct}')::double precision AS u_waveform_factor_pct,
  (b.body #>> '{results,cooling_time_s}')::double precision AS cooling_time_s,
  (b.body #>> '{results,cooling_from_C}')::double precision AS cooling_from_C,
  (b.body #>> '{results,cooling_from_source}') AS cooling_from_source,
  (b.body #>> '{results,haz_hardness_HV}')::double precision AS haz_hardness_HV,
  (b.body #>> '{results,min_current_A}')::double precision AS min_current_A,
  (b.body #>> '{results,max_current_A}')::double precision AS max_current_A,
  (b.body #>> '{results,min_voltage_V}')::double precision AS min_voltage_V,
  (b.body #>> '{results,max_voltage_V}')::double precision AS max_voltage_V,
  (b.body #>> '{results,rms_current_A}')::double precision AS rms_current_A,
  (b.body #>> '{results,sd_current_A}')::double precision AS sd_current_A,
  (b.body #>> '{results,sd_voltage_V}')::double precision AS sd_voltage_V,
  (b.body #>> '{results,start_stand_s}')::double precision AS start_stand_s,
  (b.body #>> '{results,end_stand_s}')::double precision AS end_stand_s,
  (b.body #>> '{results,frozen_s}')::double precision AS frozen_s,
  b.body #> '{results,steady}' AS steady,
  b.body #> '{results,excursions}' AS excursions,
  (b.body #>> '{results,excursion_count}')::bigint AS excursion_count,
  (b.body #>> '{results,verdict}') AS verdict,
  b.body #> '{results,failed_by}' AS failed_by,
  b.body #> '{results,undecided_by}' AS undecided_by,
  b.body #> '{results,coverage}' AS coverage,
  (b.body #>> '{results,source}') AS source,
  (b.body #>> '{results,source_line_first}')::bigint AS source_line_first,
  (b.body #>> '{results,source_line_last}')::bigint AS source_line_last,
  (b.body #>> '{results,started}') AS started,
  (b.body #>> '{results,energy_method}') AS energy_method,
  (b.body #>> '{results,power_method}') AS power_method,
  b.body #> '{results,interruptions}' AS interruptions,
  (b.body #>> '{results,interruption_count}')::bigint AS interruption_count,
  b.body #> '{results,carried}' AS carried,
  (b.body #>> '{results,steady,time_s}')::double precision AS steady_time_s,
  (b.body #>> '{results,steady,current_A}')::double precision AS steady_current_A,
  (b.body #>> '{results,steady,voltage_V}')::double precision AS steady_voltage_V,
  (b.body #>> '{results,steady,power_W}')::double precision AS steady_power_W,
  (b.body #>> '{results,steady,wire_feed_speed_m_min}')::double precision AS steady_wire_feed_speed_m_min,
  (b.body #>> '{results,steady,travel_speed_mm_s}')::double precision AS steady_travel_speed_mm_s,
  (b.body #>> '{results,steady,gas_flow_l_min}')::double precision AS steady_gas_flow_l_min,
  b.body #> '{instruments}' AS instruments,
  b.body #> '{findings}' AS findings
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('pass');

-- a manual seam, as it was recorded
CREATE TEMP VIEW manual_seams AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{ingest}')::bigint AS ingest,
  (b.body #>> '{results,unit_serial}') AS unit_serial,
  (b.body #>> '{results,weldment}') AS weldment,
  (b.body #>> '{results,seam}') AS seam,
  (b.body #>> '{results,pass}')::bigint AS pass,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{results,welder}')) AS welder_name,
  (b.body #>> '{results,welder}') AS welder,
  (b.body #>> '{results,schedule}') AS schedule,
  (b.body #>> '{results,date}') AS date,
  (b.body #>> '{results,result}') AS result,
  b.body #> '{results,failed_by}' AS failed_by,
  b.body #> '{results,undecided_by}' AS undecided_by,
  b.body #> '{findings}' AS findings
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('manual');

-- one reading of logs
CREATE TEMP VIEW ingests AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{results,passes}')::bigint AS passes,
  (b.body #>> '{results,manual}')::bigint AS manual_seams,
  (b.body #>> '{results,rows,read}')::bigint AS rows_read,
  (b.body #>> '{results,rows,in_passes}')::bigint AS rows_in_passes,
  (b.body #>> '{results,rows,arc_off}')::bigint AS rows_arc_off,
  (b.body #>> '{results,rows,rejected}')::bigint AS rows_rejected,
  (b.body #>> '{inputs,plan_file}') AS plan_file,
  (b.body #>> '{inputs,plan_sha256}') AS plan_sha256,
  b.body #> '{raw}' AS logs,
  b.body #> '{results,units}' AS units
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('ingest');

-- a revision of a schedule, in full
CREATE TEMP VIEW schedules AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{results,schedule,id}') AS schedule,
  (b.body #>> '{results,schedule,revision}')::bigint AS revision,
  (b.body #>> '{results,schedule,status}') AS status,
  (b.body #>> '{results,schedule,process}') AS process,
  (b.body #>> '{schedule}') AS schedule_sha256,
  b.body #> '{results}' AS content
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('schedule');

-- an instrument's calibration
CREATE TEMP VIEW calibrations AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{results,instrument}') AS instrument,
  (b.body #>> '{results,certificate}') AS certificate,
  (b.body #>> '{results,certificate_sha256}') AS certificate_sha256,
  (b.body #>> '{results,date}') AS calibrated_on,
  (b.body #>> '{results,due}') AS due,
  (b.body #>> '{results,as_found}') AS as_found
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('calibration');

-- what an old record should have said
CREATE TEMP VIEW corrections AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  b.body #> '{results,changes}' AS changes
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('correction');

-- an old record doesn't count
CREATE TEMP VIEW voids AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('void');

-- a person's own signature under a record
CREATE TEMP VIEW signoffs AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{results,key_id}') AS key_id,
  (b.body #>> '{results,leaf}') AS leaf,
  (b.body #>> '{results,signature}') AS signature
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('signoff');

-- what failed and has to be decided on
CREATE TEMP VIEW nonconformances AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{results,unit_serial}') AS unit_serial,
  (b.body #>> '{results,place}') AS place,
  b.body #> '{findings}' AS findings
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('nonconformance');

-- what becomes of a nonconformance
CREATE TEMP VIEW dispositions AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{results,decision}') AS decision,
  (b.body #>> '{results,unit_serial}') AS unit_serial,
  (b.body #>> '{results,schedule}') AS schedule,
  (b.body #>> '{results,retest}')::bigint AS retest,
  (b.body #>> '{results,cause}') AS cause
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('disposition');

-- a pass judged again by a later calibration
CREATE TEMP VIEW judgements AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{results,unit_serial}') AS unit_serial,
  (b.body #>> '{results,cause}') AS cause,
  (b.body #>> '{results,calibration}')::bigint AS calibration,
  (b.body #>> '{results,verdict}') AS verdict,
  b.body #> '{results,undecided_by}' AS undecided_by
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('judgement');

-- until when records are kept, and legal holds
CREATE TEMP VIEW retentions AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{results,action}') AS action,
  (b.body #>> '{results,unit_serial}') AS unit_serial,
  (b.body #>> '{results,until}') AS until
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('retention');

-- a note; its text is why
CREATE TEMP VIEW notes AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('note');

-- an anchor was kept outside, or another store's anchors are kept here
CREATE TEMP VIEW anchors AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{results,anchor}') AS anchor,
  (b.body #>> '{results,kept_in}') AS kept_in,
  b.body #> '{results,witnessed}' AS witnessed
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('anchor');

-- an outside authority's time over a head
CREATE TEMP VIEW timestamps AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{results,n}')::bigint AS head_n,
  (b.body #>> '{results,head_sha256}') AS head_sha256,
  (b.body #>> '{results,time}') AS stamped_at,
  (b.body #>> '{results,authority}') AS authority
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('timestamp');

-- a person's own key belongs to a name
CREATE TEMP VIEW person_keys AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{results,key_id}') AS key_id
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('person');

-- the store's next key
CREATE TEMP VIEW store_keys AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{results,key_id}') AS key_id,
  (b.body #>> '{replaces}') AS replaces
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('key');

-- a new key in place of a lost one
CREATE TEMP VIEW revoked_keys AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{results,key_id}') AS key_id,
  (b.body #>> '{replaces}') AS replaces
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('key_revoke');

-- the store begins
CREATE TEMP VIEW beginnings AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  (b.body #>> '{results,key_id}') AS key_id
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('genesis');

-- the store continues another one
CREATE TEMP VIEW migrations AS SELECT
  r.seq AS seq,
  (b.body #>> '{t}') AS recorded_at,
  (SELECT p.name FROM seamtakt.person p WHERE p.sha256 = (b.body #>> '{who}')) AS who,
  (b.body #>> '{who}') AS who_sha256,
  (b.body #>> '{why}') AS why,
  (b.body #>> '{ref}')::bigint AS about,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'correction') AS corrections,
  (SELECT count(*) FROM seamtakt.lookup l JOIN seamtakt.rec v ON v.seq = l.seq WHERE l.topic = 'ref' AND l.key = CAST(r.seq AS TEXT) AND v.kind = 'void') > 0 AS is_void,
  b.body #> '{results}' AS content
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
WHERE r.kind IN ('migrate');

-- a finding of a record
CREATE TEMP VIEW findings AS SELECT
  r.seq AS seq,
  r.kind AS kind,
  e.place - 1 AS place_in_list,
  (e.value #>> '{rule}') AS rule,
  (e.value #>> '{severity}') AS severity,
  (e.value #>> '{where}') AS place,
  (e.value #>> '{value}')::double precision AS value,
  (e.value #>> '{limit}')::double precision AS limit_value,
  (e.value #>> '{unit}') AS unit,
  (e.value #>> '{text}') AS text,
  (e.value #>> '{source}') AS source
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
  CROSS JOIN LATERAL jsonb_array_elements(CASE jsonb_typeof(b.body #> '{findings}') WHEN 'array' THEN b.body #> '{findings}' ELSE '[]' END) WITH ORDINALITY e(value, place)
WHERE r.kind IN ('pass', 'manual', 'nonconformance');

-- a member that a correction changed
CREATE TEMP VIEW changes AS SELECT
  r.seq AS seq,
  r.kind AS kind,
  e.place - 1 AS place_in_list,
  (e.value #>> '{member}') AS member,
  (e.value #>> '{old}') AS old_value,
  (e.value #>> '{new}') AS new_value
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
  CROSS JOIN LATERAL jsonb_array_elements(CASE jsonb_typeof(b.body #> '{results,changes}') WHEN 'array' THEN b.body #> '{results,changes}' ELSE '[]' END) WITH ORDINALITY e(value, place)
WHERE r.kind IN ('correction');

-- the arc was off within a pass
CREATE TEMP VIEW interruptions AS SELECT
  r.seq AS seq,
  r.kind AS kind,
  e.place - 1 AS place_in_list,
  (e.value #>> '{start_s}')::double precision AS start_s,
  (e.value #>> '{duration_s}')::double precision AS duration_s,
  (e.value #>> '{line}')::bigint AS line
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
  CROSS JOIN LATERAL jsonb_array_elements(CASE jsonb_typeof(b.body #> '{results,interruptions}') WHEN 'array' THEN b.body #> '{results,interruptions}' ELSE '[]' END) WITH ORDINALITY e(value, place)
WHERE r.kind IN ('pass');

-- a stretch of a pass outside a limit
CREATE TEMP VIEW excursions AS SELECT
  r.seq AS seq,
  r.kind AS kind,
  e.place - 1 AS place_in_list,
  (e.value #>> '{quantity}') AS quantity,
  (e.value #>> '{start_s}')::double precision AS start_s,
  (e.value #>> '{end_s}')::double precision AS end_s,
  (e.value #>> '{length_mm}')::double precision AS length_mm,
  (e.value #>> '{value}')::double precision AS value,
  (e.value #>> '{limit}')::double precision AS limit_value
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
  CROSS JOIN LATERAL jsonb_array_elements(CASE jsonb_typeof(b.body #> '{results,excursions}') WHEN 'array' THEN b.body #> '{results,excursions}' ELSE '[]' END) WITH ORDINALITY e(value, place)
WHERE r.kind IN ('pass');

-- an instrument that a pass was measured with
CREATE TEMP VIEW instruments AS SELECT
  r.seq AS seq,
  r.kind AS kind,
  e.place - 1 AS place_in_list,
  (e.value #>> '{id}') AS instrument,
  (e.value #>> '{quantity}') AS quantity,
  (e.value #>> '{certificate}') AS certificate,
  (e.value #>> '{due}') AS due
FROM seamtakt.rec r CROSS JOIN LATERAL (SELECT convert_from(r.body, 'UTF8')::jsonb AS body OFFSET 0) b
  CROSS JOIN LATERAL jsonb_array_elements(CASE jsonb_typeof(b.body #> '{instruments}') WHEN 'array' THEN b.body #> '{instruments}' ELSE '[]' END) WITH ORDINALITY e(value, place)
WHERE r.kind IN ('pass');

SET default_transaction_read_only = on;
