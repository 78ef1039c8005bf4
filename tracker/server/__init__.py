"""The screens as one ASGI application in this process: who may ask it, what it answers beside them, how it is run."""
