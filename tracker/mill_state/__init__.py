"""What a plan, a rehearsal and a screen need of the mill, put together without a database."""
