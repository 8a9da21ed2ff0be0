-- What the document of a case rests on beside its history, so that a trial can tell whether judging it again would say the
-- same. Null where nobody wrote it down: before this migration, and by a replica of the release before.
ALTER TABLE case_file ADD COLUMN judged_of text COLLATE "C";
