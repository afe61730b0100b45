@echo off
rem Opens the worktable for the folder that was dropped on this file, or for "My names" beside it.
chcp 65001 >nul
set "job=%~1"
if "%job%"=="" set "job=%~dp0My names"
if not exist "%job%\" mkdir "%job%"
"%~dp0program\nameband.exe" page "%job%"
echo.
pause
