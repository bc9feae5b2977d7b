"""Who may do what with what others hand in: states, reasons, submissions, decisions, tokens, licences."""
