from .generated import *
from .generated import __all__, __doc__
