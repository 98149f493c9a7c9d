/** SQL: when the first entry was made that stands in no backup. $1 is the operator. */

/**
 * A backup holds what was entered before the instant it carries; what was entered from then on may miss it. Its own entry
 * is none that a backup has to hold. One row, or none where everything is saved.
 */
export const UNSAVED_SINCE = `
  select e.entered_at as at from record_entry e
  where e.operator_id = $1 and e.what <> 'backup.made' and e.seq > coalesce((
    select l.seq from record_entry l
    where l.operator_id = $1 and l.entered_at < (
      select b.entered_at from record_entry b
      where b.operator_id = $1 and b.what = 'backup.made' order by b.seq desc limit 1)
    order by l.seq desc limit 1), 0)
  order by e.seq limit 1`;
