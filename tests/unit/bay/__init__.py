"""Tests of the bay: checks, records, status, release, due dates."""
