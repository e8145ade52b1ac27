//! What can be flown again: scripted legs and their files.
