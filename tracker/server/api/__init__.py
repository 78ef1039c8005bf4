"""The interface for programs below `/api`: `holders` says who asks, `reads` what can be read, `posts` what can be posted, and
`app` puts it together."""
