"""The sample mill: invented workbooks and the script that makes them."""
