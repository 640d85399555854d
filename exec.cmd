@rem "npm run verso" begins with exec, which cmd does not know. See docs/decisions/0002-run-from-source.md.
@%*
