"""The outfit as it is written down: a folder of files, read key by key, changed fact by fact."""
