### What the check without the solver finds wrong with a plan. A finding with a parameter `loom` is about that loom.

## Every loom once

booked-again = loom { $loom } is booked { $times } times
    .means = A loom may be booked once only.
left-over-again = loom { $loom } is left over { $times } times
    .means = A loom may be left over once only.
booked-and-left-over = loom { $loom } is booked and left over
    .means = A loom is one or the other.
neither-booked-nor-left-over = loom { $loom } is neither booked nor left over
    .means = A loom to be planned has no answer.
booked-unlisted = loom { $loom } is booked but not in the list of looms
    .means = The plan books a loom that is not listed any more.
not-to-plan = loom { $loom } is { $answer ->
        [booked] booked
       *[left-over] left over
    }, though it is { $why ->
        [put-off] put off
        [left-out] left out of the programme
        [converted] converted already
        [in-work] in work
       *[unlisted] not in the list of looms
    }
    .means = The plan has an answer for a loom that is not to be planned.

## When

starts-too-early = loom { $loom } starts { $start }, before { $earliest }
    .means = A booking begins before the moment planned from or the programme's start.
ends-past-horizon = loom { $loom } ends { $end }, past the horizon { $horizon }
    .means = A booking ends after the horizon.
starts-protected = loom { $loom } starts { $start }, but is protected until { $until } included
    .means = A booking begins while its loom is protected.
starts-ruled-out = loom { $loom } starts { $start }, but { $first } to { $last } was ruled out for it
    .means = A booking begins in a span in which somebody did not want the loom converted.
booked-unplannable = loom { $loom } is booked, though { $why }
    .means = A booking of a loom that cannot be planned.
no-such-conversion = loom { $loom }: the method has no conversion in a { $kind } window with { $choices ->
        [none] no choices
       *[other] { $choices }
    }
    .means = The work that was booked is not in the method.
other-parts-booked = loom { $loom }: the parts booked are not those of its scope
    .means = The parts of a booking differ from what the method asks for.
other-labour-booked = loom { $loom }: { NUMBER($booked, minimumFractionDigits: 2, maximumFractionDigits: 2) } person-hours booked, its scope has { NUMBER($scope, minimumFractionDigits: 2, maximumFractionDigits: 2) }
    .means = The person-hours of a booking differ from what the method asks for.
no-such-window = loom { $loom }: there is no { $kind } window { $window }
    .means = The window that was booked is not in the forecast.
other-beam-out = loom { $loom }: the booking names another beam-out than its window { $window }
    .means = The beam-out of a booking is not that of its window.
starts-off-grid = loom { $loom } starts { $start }, not on a half hour
    .means = A booking begins beside the half hours in which plans are made.
starts-without-crew = loom { $loom } starts { $start }, when no { $trade } crew is at work
    .means = Nobody could begin the conversion then.
other-length = loom { $loom }: { $booked } half hours booked, its scope has { $scope }
    .means = A booking is shorter or longer than its work.
other-pause = loom { $loom }: booked { $booked }; by its scope and the ordinary change it is { $due }
    .means = The pause of a conversion, in which the warp is changed, is not where its parts end and begin.
with-pause = with a pause from { $start } to { $end }
    .means = A conversion in two parts with the ordinary change between them.
in-one-piece = in one piece
    .means = A conversion without a pause.
ends-otherwise = loom { $loom } ends { $end }, but { $due ->
        [none] the crews' time ends before it is done
       *[other] { $slots } working half hours end { $due }
    }
    .means = A booking does not end when its work does.
open-over-closed-day = loom { $loom } stands open over { $day }, on which nobody converts
    .means = A loom would be taken apart over a day on which nobody works at it.
restart-unwatched = loom { $loom } ends { $end }, and no { $trade } is at work as long as its restart needs
    .means = After its restart a loom is left without the people that its last steps or the term `watch` ask for.
outside-window = loom { $loom } starts { $start }, { $how ->
        [span] outside its { $kind } window { $opens } to { $closes }
        [before-beam-out] more than 4 h before its beam-out { $beam_out }
        [after-beam-out] after the { $slots }nd working half hour from its beam-out { $beam_out }
        [full-hour] not on a full hour, in a window more than 14 days off
       *[first-of-day] not in the first working half hour of the day, as a mid-warp stop does
    }
    .means = A booking begins outside the window that it is booked in.

## Who and what is shared

too-few-crews = { $start } to { $end }: more { $trade } crews wanted than there are
    .means = More conversions at once than crews.
too-little-room = { $start } to { $end }: more { $trade } crews wanted than the term 'room between bookings' leaves
    .means = Conversions follow each other closer than the room that the mill asks for.
week-too-full = { $week }: { NUMBER($hours) } h of { $trade } crews are planned, less the term 'usual absence' there are { NUMBER($limit) } h
    .means = A week is planned fuller than the usual absence of its crews leaves.
too-few-heads = { $start } to { $end }: more { $trade } heads wanted than there are
    .means = More people of a trade wanted at once than there are.
too-few-tools = { $start } to { $end }: more than { $limit } of tool { $tool } in use
    .means = A tool is used more than it is there.
too-many-stopped = { $hall }: { $stopped } looms stopped at { $at }, the limit is { $limit }
    .means = More looms of a hall stand than the term allows.
too-many-stopped-in-section = section { $section } of { $hall }: { $stopped } looms stopped at { $at }, the limit is { $limit }
    .means = More looms of a weaver's section stand than the term allows.
part-short = part { $part }: { QUANTITY($needed) } needed by { $day }, { QUANTITY($usable) } usable
    .means = The bookings take more of a part than is there.

## What comes first

before-pilot = loom { $loom } starts { $start }, before the pilot of { $type } has run { $days } days ({ $until })
    .means = A loom begins before its type's pilot has proven itself.
pilots-booked = { $type }: { $pilots ->
        [0] no
       *[other] { $pilots }
    } pilots booked, one is needed before { $bookings ->
        [one] 1 booking
       *[other] { $bookings } bookings
    }
    .means = A machine type has no pilot, or several.
other-pilot = { $type }: loom { $pilot } is the pilot, the mill names { $named }
    .means = Another loom is the pilot than the terms say.
pilot-alone = loom { $loom } is a pilot without the { $trade } throughout, and the plan does not say why
    .means = Who is to stay with a pilot from start to end does not.
firm-moved = loom { $loom }: the firm booking of { $start } { $now ->
        [none] is gone
       *[other] was moved to { $now }
    }, though it could stay
    .means = A booking within the firm period was changed without need.
held-moved = loom { $loom }: the booking of { $start }, which was to be held, { $now ->
        [none] is gone
       *[other] { $choices ->
            [yes] has other choices
           *[no] was moved to { $now }
        }
    }
    .means = A booking was to stay where it was and does not.
moves-not-stated = the plan was to keep bookings and does not say how many it moves
    .means = A plan that holds bookings or moves few lacks the count of its moves.
moves-otherwise = { $moves ->
        [one] 1 booking is moved
       *[other] { $moves } bookings are moved
    }, the plan states { $stated }{ $fewest ->
        [none] {""}
       *[other] {" "}and that no plan moves fewer than { $fewest }
    }
    .means = The plan counts its moves wrongly.
too-many-moves = { $moves ->
        [one] 1 booking is moved
       *[other] { $moves } bookings are moved
    }, where { $most ->
        [none] the most was to be stated
       *[other] at most { $most } were to be
    } ({ $more } more than needed)
    .means = A plan that was to move few bookings moves more.
firm-length = loom { $loom }: the firm booking has { $slots } half hours, { $due } are due
    .means = A firm booking is longer or shorter than it should be.
firm-labour = loom { $loom }: the firm booking has { NUMBER($booked, minimumFractionDigits: 2, maximumFractionDigits: 2) } person-hours, { NUMBER($due, minimumFractionDigits: 2, maximumFractionDigits: 2) } were published
    .means = A firm booking has other person-hours than were published.
firm-end = loom { $loom }: the firm booking ends { $end }, due is { $due }
    .means = A firm booking ends otherwise than it should.

## Names

crew-changes-stated = { $changes } changes of crew within a shift, the plan states { $stated }
    .means = The plan counts its changes of crew wrongly.
crew-changes-needless = { $changes } changes of crew within a shift, where every crew may stay with its loom
    .means = Crews change although none needs to.
nobody-named = loom { $loom }: no crew is named at { $at }
    .means = A booked half hour without a crew.
turn-outside = loom { $loom }: crew { $crew } is named from { $start } to { $end }, outside the booking or while another is there
    .means = A crew is named before the start, after the end, or over another one.
needs-otherwise = loom { $loom }: { $listed } × { $what } is listed at { $at }, its work holds { $held } then
    .means = A booking lists another trade or a tool otherwise than its work holds it.
crew-not-at-work = loom { $loom }: crew { $crew } is named at { $at }, when it is not at work there
    .means = A crew is named outside its shifts or its hall.
crew-on-several-looms = crew { $crew } is named on several looms at { $at }: { $looms }
    .means = A crew is at one loom at a time.
other-crew = loom { $loom }: crew { $published } was published at { $at }, { $crew } is named
    .means = A firm booking lost its published crew without need.

## Costs and proof

other-cost = loom { $loom }: { $term } { NUMBER($booked, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) } { $currency } booked, the data give { NUMBER($due, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) }
    .means = A cost of a booking is not what the data say.
other-left-over-cost = loom { $loom }: left over at { NUMBER($booked, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) } { $currency }, the data give { NUMBER($due, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) }
    .means = What leaving a loom over costs is not what the data say.
dearer-than-leaving = loom { $loom } is booked at { NUMBER($booked, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) } { $currency }, leaving it over costs { NUMBER($left, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) } { $currency }
    .means = A booking costs more than not converting the loom.
infeasible-but-booked = the status is { $status }, and yet { $bookings ->
        [one] 1 loom is
       *[other] { $bookings } looms are
    } booked
    .means = A plan without a solution has bookings.
gap-and-status = the status is { $status }, but the gap of { $gap } is { $how ->
        [above] above { $limit }
       *[within] not above { $limit }
    }
    .means = What is called proven is not, or the other way round.
other-objective = the objective is { NUMBER($objective, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) }, bookings and left-over looms add up to { NUMBER($total, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) }
    .means = The costs do not add up to the objective.
bound-above-objective = the bound { NUMBER($bound, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) } lies above the objective { NUMBER($objective, minimumFractionDigits: 2, maximumFractionDigits: 2, useGrouping: 0) }
    .means = The proof contradicts the plan.
