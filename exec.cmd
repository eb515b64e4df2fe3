@rem The npm scripts that serve begin with 'exec', so that a signal sent to npm reaches Node and not a shell
@rem in between. Windows lacks that word; this gives it the same meaning.
@%*
