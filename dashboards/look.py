"""The look of the screens: colours with their shapes and words, and the style sheet."""

from tracker.domain.windows import WindowKind

INK, GREY, LINE, CLOTH = "#232b31", "#596167", "#d9d2c3", "#f1ece1"
REST, PAPER = "#f0ebdf", "#fbf9f4"
WOAD, WELD, MADDER, WALNUT = "#1d5c73", "#c8921c", "#a2392f", "#7a6652"

KIND_COLOURS = {
    WindowKind.REPEAT.value: WOAD,
    WindowKind.STYLE.value: WELD,
    WindowKind.STANDING.value: WALNUT,
    WindowKind.MID_WARP.value: MADDER,
}
KIND_SHAPES = {
    WindowKind.REPEAT.value: "circle",
    WindowKind.STYLE.value: "square",
    WindowKind.STANDING.value: "triangle-up",
    WindowKind.MID_WARP.value: "diamond",
}
KIND_SIGNS = {
    WindowKind.REPEAT.value: "●",
    WindowKind.STYLE.value: "■",
    WindowKind.STANDING.value: "▲",
    WindowKind.MID_WARP.value: "◆",
}
"""The shapes as letters, for tables and legends."""

STYLE = f"""
<style>
.block-container {{ padding: 2.6rem 2.2rem 3rem; max-width: 1500px; }}
h1 {{ font-size: 2rem !important; padding-bottom: .1rem !important; }}
h2 {{ font-size: 1.3rem !important; padding-top: .6rem !important; }}
h3 {{ font-size: 1.12rem !important; padding-top: .3rem !important; }}
.figures {{ display: grid; grid-template-columns: repeat(auto-fit, minmax(205px, 1fr)); gap: .8rem; }}
.figure {{ border-top: 3px solid {WOAD}; background: {CLOTH}; padding: .6rem .9rem .7rem; }}
.figure .what {{ color: {GREY}; font-size: .85rem; }}
.figure .value {{ font-size: 1.45rem; font-weight: 600; line-height: 1.3; font-variant-numeric: tabular-nums; }}
.figure .more {{ font-size: .88rem; }}
.legend {{ display: flex; flex-wrap: wrap; gap: .2rem 1.3rem; font-size: .88rem; align-items: center; }}
.legend > span {{ display: inline-flex; align-items: center; gap: .4rem; }}
.legend i {{ display: inline-block; width: 22px; height: 12px; box-sizing: border-box; font-style: normal; }}
.legend b {{ font-size: 1.05rem; line-height: 1; margin-right: -.75rem; z-index: 1; }}
.legend b.sign {{ margin: 0; }}
[data-testid=stCaptionContainer] {{ opacity: 1; }} [data-testid=stCaptionContainer] p {{ color: {GREY}; }}
.who {{ text-align: right; font-size: .88rem; color: {GREY}; }} .who a {{ color: {WOAD}; }}
#session-over {{ position: fixed; inset: 0 0 auto 0; z-index: 2000000; padding: .7rem 1rem; background: {MADDER}; color: white; }}
#session-over a {{ color: white; text-decoration: underline; }}
.back {{ color: {WOAD}; }}
.sheet {{ overflow-x: auto; background:
  linear-gradient(90deg, #fbf9f4 40%, #fbf9f400) 0 0 / 40px 100% no-repeat local,
  linear-gradient(270deg, #fbf9f4 40%, #fbf9f400) 100% 0 / 40px 100% no-repeat local,
  linear-gradient(90deg, #232b3140, #232b3100) 0 0 / 14px 100% no-repeat scroll,
  linear-gradient(270deg, #232b3140, #232b3100) 100% 0 / 14px 100% no-repeat scroll; }}
.sheet table {{ border-collapse: collapse; width: 100%; font-size: .86rem; line-height: 1.35; font-variant-numeric: tabular-nums; }}
.sheet th {{ text-align: left; vertical-align: bottom; border-bottom: 2px solid {INK}; padding: .3rem .7rem .3rem 0;
  cursor: pointer; font-weight: 600; }}
.sheet th::after {{ content: "\\2195"; color: {LINE}; padding-left: .25rem; }}
.sheet th[aria-sort=ascending]::after {{ content: "\\2191"; color: {INK}; }}
.sheet th[aria-sort=descending]::after {{ content: "\\2193"; color: {INK}; }}
.sheet th:focus-visible {{ outline: 2px solid {WOAD}; }}
.sheet td {{ border-bottom: 1px solid {LINE}; padding: .3rem .7rem .3rem 0; vertical-align: top; }}
.sheet a {{ color: {WOAD}; font-weight: 600; }}
.sheet.facts th {{ cursor: default; }} .sheet.facts th::after {{ content: ""; }}
.sheet .right {{ text-align: right; white-space: nowrap; }}
.sheet th.right {{ white-space: normal; overflow-wrap: anywhere; min-width: 5.5rem; }}
.sheet .whole {{ white-space: nowrap; }}
.sheet tbody tr:hover {{ background: {CLOTH}; }}
.hall {{ overflow-x: auto; padding-bottom: .4rem; }}
.hall-row {{ display: flex; gap: .35rem; align-items: stretch; margin-bottom: .35rem; }}
.hall-name {{ flex: 0 0 4.2rem; color: {GREY}; font-size: .85rem; align-self: center; }}
.hall-loom {{ flex: 0 0 6.4rem; min-height: 44px; padding: .25rem .4rem; background: {CLOTH}; border: 1px solid {LINE};
  color: {INK} !important; text-decoration: none; font-size: .8rem; line-height: 1.3; }}
.hall-loom:focus-visible {{ outline: 2px solid {WOAD}; }} .hall-loom:hover {{ border-color: {WOAD}; }}
.hall-loom b {{ font-size: .95rem; }} .hall-loom .alarm {{ color: {MADDER}; font-weight: 600; }}
.hall-loom.faint {{ background: none; border-style: dotted; color: {GREY} !important; }}
[class*=st-key-touch] button, [class*=st-key-touch] input, [class*=st-key-touch] [data-baseweb=select] > div {{
  min-height: 44px; min-width: 44px; }}
[class*=st-key-touch] summary {{ min-height: 44px; }}
[class*=st-key-cautions] ul {{ columns: 22rem 2; column-gap: 2rem; font-size: .88rem; }}
[class*=st-key-cautions] li {{ break-inside: avoid; }}
@media (max-width: 900px) {{
  .block-container {{ padding: 2.6rem 1rem 2rem; }}
  .figures {{ grid-template-columns: repeat(2, 1fr); }}
  .sheet .whole {{ white-space: normal; }}
  .sheet td span {{ white-space: nowrap; }}
  .sheet:not(.facts) td:not([class]) {{ min-width: 5.5rem; }}
  .sheet table {{ font-size: .8rem; }}
  [class*=st-key-pair] .stHorizontalBlock {{ flex-direction: column; }}
  [class*=st-key-pair] .stColumn {{ width: 100%; flex: 1 1 auto; }}
}}
[class*=st-key-method-] .sheet td {{ min-width: 4.5rem; }}
.st-key-method-operations .sheet td:nth-child(2), .st-key-method-operations .sheet td:nth-child(10) {{ min-width: 17rem; }}
@media print {{ header, .stAppHeader {{ display: none !important; }} }}
</style>
"""
