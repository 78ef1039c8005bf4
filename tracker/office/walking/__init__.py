"""What the fast reader leaves out, found in the XML of a workbook."""
