"""What an option takes: the tasks of the work and the minutes of each."""
