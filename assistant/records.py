"""Records: frozen values with named fields, like the library's frozen dataclasses and read as such by type checkers.

The library writes six methods for every class as text and compiles them, and imports half of the
introspection tools to do so: together a third of what a cold question took. Here two methods are
written, each when it is first needed: the one that makes a record and the one that copies it, which
a question calls a hundred times. The others are shared.
"""

from __future__ import annotations

from operator import attrgetter

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any, TypeVar, dataclass_transform

    T = TypeVar("T")
else:

    def dataclass_transform(**kinds: object) -> Callable[[T], T]:
        """Nothing at run time."""
        return lambda found: found


_UNSAID = object()


class _Field:
    """How a field is filled when nothing is said, and whether it is shown."""

    __slots__ = ("factory", "plain", "repr")

    def __init__(self, plain: object, factory: Callable[[], Any] | None, shown: bool) -> None:
        self.plain, self.factory, self.repr = plain, factory, shown


def field(*, default: Any = _UNSAID, default_factory: Callable[[], Any] | None = None, repr: bool = True) -> Any:
    """A field with a default that is made anew each time, or that is not shown."""
    return _Field(default, default_factory, repr)


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def record(cls: type[T]) -> type[T]:
    """A class of frozen values: its annotations are the fields, in order.

    >>> @record
    ... class Light:
    ...     power: float
    ...     name: str = "key"
    >>> Light(0.5), Light(0.5) == Light(power=0.5, name="key"), hash(Light(1.0)) == hash(Light(1.0))
    (Light(power=0.5, name='key'), True, True)
    >>> Light(0.5).power = 1.0
    Traceback (most recent call last):
    AttributeError: a Light does not change: power
    """
    return _made(cls, {"__setattr__": _unchanging, "__delattr__": _unchanging, "__hash__": _hash})  # type: ignore[no-any-return]


@dataclass_transform(field_specifiers=(field,))
def changing(cls: type[T]) -> type[T]:
    """A class whose fields may change: what goes on, not what is said.

    >>> @changing
    ... class Shoot:
    ...     frames: list[int] = field(default_factory=list)
    >>> shoot = Shoot()
    >>> shoot.frames = [1]
    >>> shoot, Shoot()
    (Shoot(frames=[1]), Shoot(frames=[]))
    """
    return _made(cls, {"__hash__": None})  # type: ignore[no-any-return]


def replace(record: T, /, **changes: Any) -> T:
    """The same record with some fields changed.

    >>> @record
    ... class Light:
    ...     power: float
    ...     name: str = "key"
    >>> replace(Light(1.0), power=0.25)
    Light(power=0.25, name='key')
    """
    cls: Any = type(record)
    made = cls._copied(record)
    for name, value in changes.items():
        setattr(made, name, value)
    made.__class__ = cls
    return made  # type: ignore[no-any-return]


def _made(cls: Any, methods: dict[str, Any]) -> Any:
    """The class once more with slots for its fields and the shared methods.

    The slots are those of a class below it that may change: a record that is being made is one of those,
    and takes plain assignments, until all its fields are filled.
    """
    body = {name: value for name, value in vars(cls).items() if name not in ("__dict__", "__weakref__")}
    names = tuple(body.get("__annotations__", ()))
    given = {name: body.pop(name) for name in names if name in body}
    blank = type(cls)(f"_{cls.__name__}InTheMaking", cls.__bases__, {"__slots__": names, "__module__": cls.__module__})
    body.update(methods, __slots__=(), __new__=_first_new, __eq__=_eq, __repr__=_repr, __match_args__=names, _given=given, _blank=blank, _copied=classmethod(_first_copied), _values=staticmethod(_all(names)), _some=staticmethod(_all((*names[:3], *(n for n in names[3:] if n == "start")))))
    made = type(cls)(cls.__name__, (blank,), body)
    made.__qualname__ = cls.__qualname__
    return made


def _all(names: tuple[str, ...]) -> Callable[[Any], tuple[Any, ...]]:
    if len(names) > 1:
        return attrgetter(*names)
    only = attrgetter(*names)
    return lambda record: (only(record),)


def _first_new(cls: Any, *said: Any, **named: Any) -> Any:
    """Stands in until the first record of its class is made, and writes its `__new__` then."""
    names, known = [], {"_unsaid": _UNSAID, "_blank": cls._blank}
    lines = []
    for name in cls._blank.__slots__:
        given = cls._given.get(name, _UNSAID)
        factory = given.factory if isinstance(given, _Field) else None
        known[f"_given_{name}"] = factory or (given.plain if isinstance(given, _Field) else given)
        value = f"_given_{name}() if {name} is _unsaid else {name}" if factory else name
        names.append(name if known[f"_given_{name}"] is _UNSAID else f"{name}=_unsaid" if factory else f"{name}=_given_{name}")
        lines.append(f"_self.{name} = {value}")
    cls.__new__ = staticmethod(_written(f"__new__(_cls, {', '.join(names)})", [*lines, "_self.__class__ = _cls"], known))
    return cls(*said, **named)


def _first_copied(cls: Any, record: Any) -> Any:
    """Stands in until the first record of its class is changed, and writes its `_copied` then: the same fields, in the making."""
    lines = [f"_self.{name} = _record.{name}" for name in cls._blank.__slots__]
    cls._copied = staticmethod(_written("_copied(_record)", lines, {"_blank": cls._blank}))
    return cls._copied(record)


def _written(head: str, lines: list[str], known: dict[str, Any]) -> Callable[..., Any]:
    """The function of this head that makes a blank record, fills it by these lines and gives it back; the names in them are those of fields of ours."""
    exec(f"def {head}:\n    _self = _blank()\n    " + "\n    ".join(lines) + "\n    return _self", known)
    return known[head.partition("(")[0]]  # type: ignore[no-any-return]


def _unchanging(self: object, name: str, *value: object) -> None:
    raise AttributeError(f"a {type(self).__name__} does not change: {name}")


def _eq(self: Any, other: Any) -> bool:
    """The few fields first: a fact may be looked for among hundreds of like ones that stand elsewhere."""
    return (self._some(self) == other._some(other) and self._values(self) == other._values(other)) if other.__class__ is self.__class__ else NotImplemented


def _hash(self: Any) -> int:
    """Of the first few fields and of where a fact was said: records that differ only in the rest are rare, and told apart when compared."""
    return hash(self._some(self))


def _repr(self: Any) -> str:
    shown = (f"{name}={value!r}" for name, value in zip(self.__match_args__, self._values(self)) if not isinstance(g := self._given.get(name), _Field) or g.repr)
    return f"{type(self).__qualname__.rpartition('.')[2]}({', '.join(shown)})"
