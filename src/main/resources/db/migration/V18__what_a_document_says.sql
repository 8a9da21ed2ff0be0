-- What the document of a case says, member by member in a digest, so that the next judgement can tell what it has changed
-- without reading the document; and of which change of the case that is. Another moment than that of the last change, or none,
-- stands where nobody wrote it down: before this migration, and by a replica of the release before.
ALTER TABLE case_file
  ADD COLUMN document_digest text COLLATE "C",
  ADD COLUMN digested_at timestamptz;
