-- Events on their way to Kafka: a claimed one is sent by another replica only when its claim has run out.

ALTER TABLE outbox ADD COLUMN claimed_until timestamptz;
CREATE INDEX outbox_in_order ON outbox (tenant_id, aggregateid, position) WHERE published_at IS NULL;
GRANT UPDATE (claimed_until) ON outbox TO ${serviceRole};
