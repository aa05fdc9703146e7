import { HelpButton } from "../help/HelpButton.tsx";
import { Brand } from "../panels/Brand.tsx";
import { FindBox } from "../panels/FindBox.tsx";
import { SettingsButton } from "../panels/SettingsButton.tsx";
import { ThemeButton } from "../panels/ThemeButton.tsx";
import { useAppStore } from "../state/AppContext.tsx";
import { useLearning } from "./useLearning.ts";

/** The bar of the learner's bench: back to the library, the pages, find, light or dark. */
export function LearnerBar() {
  const { dispatch } = useAppStore();
  const title = useLearning(({ attempt }) => attempt.exercise.title);
  const pages = useLearning(({ attempt }) => attempt.exercise.circuit.pages);
  const shown = useLearning(({ sight }) => sight.page);
  return (
    <header className="bar">
      <h1 className="unseen">{title}</h1>
      <Brand />
      <nav className="tabs" aria-label="Pages">
        <div className="tabs-row is-pushed">
          {pages.map((page, index) => (
            <button
              key={page.id}
              type="button"
              className={page.id === shown ? "tab is-shown" : "tab"}
              aria-current={page.id === shown ? "page" : undefined}
              title={page.title}
              onClick={() => dispatch({ do: "show-page", page: page.id })}
            >
              <span className="tab-number figures">{index + 1}</span>
              <bdi className="tab-title">{page.title}</bdi>
            </button>
          ))}
        </div>
      </nav>
      <div className="acts">
        <FindBox />
        <ThemeButton />
        <SettingsButton />
        <HelpButton />
      </div>
    </header>
  );
}
