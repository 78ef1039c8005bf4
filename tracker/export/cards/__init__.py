"""Cards on paper and as workbooks to fill in: `words` in a language, `blocks` of a card, `card` and `note`, `packs` as files."""
