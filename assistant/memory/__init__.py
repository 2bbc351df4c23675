"""What was said, what is owned and what was shot: the program's memory, short and long."""
