-- Cases that were there before the table of what is searched. The owner may read them since V3; events go on beside this, for
-- it locks no case.
INSERT INTO case_search (tenant_id, reference, search)
SELECT tenant_id, reference, search FROM case_file ORDER BY tenant_id, reference
ON CONFLICT DO NOTHING;
