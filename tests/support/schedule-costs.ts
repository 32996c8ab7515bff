/** What a schedule costs, reckoned from the problem as it is written; shares no code with the scheduler. */
import type { Schedule, ScheduleProblem } from "#engine/schedule";

interface Costs {
  readonly makespanMinutes: number;
  readonly weightedTardinessMinutes: number;
  readonly changeoverMinutes: number;
  readonly objectiveValue: number;
}

export function costsBy(problem: ScheduleProblem, { operations }: Pick<Schedule, "operations">): Costs {
  const endOf = (job: string) => Math.max(...operations.filter((each) => each.job === job).map((o) => o.endMinute));
  const tardiness = problem.jobs.map(
    ({ id, dueMinute, weight }) => (weight ?? 1) * Math.max(0, endOf(id) - (dueMinute ?? Number.POSITIVE_INFINITY)),
  );
  const changeovers = problem.resources.map(({ id, changeoverMinutes, initialFamily }) => {
    const families = operations
      .filter(({ resources, startMinute, endMinute }) => resources.includes(id) && endMinute > startMinute)
      .map((each) => {
        const job = problem.jobs.find((candidate) => candidate.id === each.job);
        const operation = job?.operations.find((candidate) => candidate.id === each.operation);
        const isHeld = operation?.holdsDuring?.includes(id) === true;
        return {
          at: each.startMinute,
          stays: isHeld || each.workEndMinute > each.startMinute,
          family: operation?.family,
        };
      })
      .filter(({ stays }) => stays)
      .sort((a, b) => a.at - b.at)
      .map(({ family }) => family ?? "");
    return families.reduce(
      (sum, family, i) => sum + (changeoverMinutes?.[(i === 0 ? initialFamily : families[i - 1]) ?? ""]?.[family] ?? 0),
      0,
    );
  });
  const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);
  const makespanMinutes = Math.max(...problem.jobs.map(({ id }) => endOf(id)));
  const { objective } = problem;
  return {
    makespanMinutes,
    weightedTardinessMinutes: sum(tardiness),
    changeoverMinutes: sum(changeovers),
    objectiveValue:
      objective === "makespan"
        ? makespanMinutes
        : (objective.makespan ?? 0) * makespanMinutes +
          (objective.weightedTardiness ?? 0) * sum(tardiness) +
          (objective.changeover ?? 0) * sum(changeovers),
  };
}
