"""What hands and head have to decide and to spend: the ways to read unclear words, and the time that rows take."""
