"""What every kept noun shares: revisions by hash, the audit log, keys of writes, pages."""
